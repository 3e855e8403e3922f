/** One line of the table. */
export interface Measured {
  readonly name: string;
  readonly value: string;
  readonly floor: string;
  readonly ratio: string;
  readonly target: string;
  /** Null when it was not measured. */
  readonly met: boolean | null;
}

const HEAD = ["measured", "value", "floor", "ratio", "target", "met"];

/** Prints the table in Markdown, so that it can be kept as it is. */
export function printTable(rows: readonly Measured[]): void {
  const cells = rows.map(({ name, value, floor, ratio, target, met }) => [
    ...[name, value, floor, ratio, target],
    met === null ? "not measured" : met ? "yes" : "no",
  ]);
  const widths = HEAD.map((head, i) => Math.max(head.length, ...cells.map((row) => row[i]?.length ?? 0)));
  const print = (row: readonly string[]) =>
    console.log(`| ${row.map((cell, i) => cell.padEnd(widths[i] ?? 0)).join(" | ")} |`);
  print(HEAD);
  print(widths.map((width) => "-".repeat(width)));
  for (const row of cells) print(row);
}
