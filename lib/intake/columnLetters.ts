/** The letters a spreadsheet shows above a column: 0 is A, 26 is AA. */
export function columnLetters(index: number): string {
  const rest = Math.floor(index / 26) - 1;
  return (rest >= 0 ? columnLetters(rest) : "") + String.fromCharCode(65 + (index % 26));
}
