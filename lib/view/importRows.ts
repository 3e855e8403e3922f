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
 * Reads row numbers as one writes them (`3-5, 9`), rising and once each.
 *
 * @param known Row numbers the file has; others are left out, so that a list stays as short as the file.
 * @returns null when the text is no list of row numbers.
 */
export function readRowList(text: string, known: readonly number[]): number[] | null {
  const pieces = text.split(/[,;\s]+/).filter((piece) => piece !== "");
  const runs = pieces.map((piece) => /^(\d{1,7})(?:[-–](\d{1,7}))?$/.exec(piece));
  if (runs.some((run) => run === null)) return null;
  const spans = runs.map((run) => [Number(run?.[1]), Number(run?.[2] ?? run?.[1])] as const);
  return [...known]
    .filter((row) => spans.some(([from, to]) => row >= from && row <= to))
    .sort((a, b) => a - b);
}
