/**
 * Why a file whose content is not what its name says is not taken; null where the two agree.
 *
 * @param format What the bytes were found to be.
 */
export function misnamed(fileName: string, format: "csv" | "workbook"): string | null {
  const saysWorkbook = /\.xlsx$/i.test(fileName);
  if (saysWorkbook === (format === "workbook")) return null;
  return saysWorkbook
    ? "The name ends in .xlsx, but the file holds plain text. Name it .csv, or save it as a workbook."
    : "The file is a workbook, but its name does not end in .xlsx. Name it so, or save it as .csv.";
}
