/** Rows a sheet of a workbook has at most, by the limits its makers publish (from memory). */
const LAST_ROW = 1_048_576;

/** Row numbers as one writes them: `3-5,9`. */
export function writeRowList(rows: readonly number[]): string {
  const sorted = [...new Set(rows)].sort((a, b) => a - b);
  const runs: [number, number][] = [];
  for (const row of sorted) {
    const last = runs.at(-1);
    if (last && last[1] === row - 1) last[1] = row;
    else runs.push([row, row]);
  }
  return runs.map(([from, to]) => (from === to ? String(from) : `${from}-${to}`)).join(",");
}

/**
 * Reads row numbers as one writes them (`3-5, 9`), rising and once each; rows beyond a sheet's end are cut off.
 *
 * @returns null when the text is no list of row numbers.
 */
export function readRowList(text: string): number[] | null {
  const rows = new Set<number>();
  for (const piece of text.split(/[,;\s]+/).filter((one) => one !== "")) {
    const run = /^(\d{1,9})(?:[-–](\d{1,9}))?$/.exec(piece);
    if (!run) return null;
    const last = Math.min(Number(run[2] ?? run[1]), LAST_ROW);
    for (let row = Math.max(1, Number(run[1])); row <= last; row += 1) rows.add(row);
  }
  return [...rows].sort((a, b) => a - b);
}
