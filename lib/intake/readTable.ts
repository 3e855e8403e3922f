import { UnreadableFile } from "@/lib/intake/limits";
import type { RawCell } from "@/lib/intake/reading";
import { readText } from "@/lib/intake/readText";
import type { Encoding } from "@/lib/intake/textEncoding";
import { readWorkbook } from "@/lib/intake/workbook/readWorkbook";
import { err, ok, type Result } from "@/lib/kernel/result";

export type Separator = ";" | "," | "\t" | "|";

/** One sheet's cells as they stand; row 1 of the file is rows[0]. */
export type Sheet = {
  name: string;
  hidden: boolean;
  rows: RawCell[][];
  /** What a person should know beside the cells: hidden rows, comments, formulas, letters that are none. */
  notes: string[];
};

/** A file's cells, and how it was read; encoding and separator are null for a workbook. */
export type TableFile = {
  format: "csv" | "workbook";
  encoding: Encoding | null;
  separator: Separator | null;
  sheets: Sheet[];
};

/** What a person chose instead of what was found. */
export type TableChoice = { encoding?: Encoding | undefined; separator?: Separator | undefined };

/** Workbooks are zip archives, whatever their name ends in. */
function isZip(bytes: Uint8Array): boolean {
  return bytes[0] === 0x50 && bytes[1] === 0x4b && (bytes[2] === 0x03 || bytes[2] === 0x05);
}

function isOldWorkbook(bytes: Uint8Array): boolean {
  return bytes[0] === 0xd0 && bytes[1] === 0xcf && bytes[2] === 0x11 && bytes[3] === 0xe0;
}

/**
 * Reads a file's cells: a workbook (.xlsx), or text whose encoding and separator are found from the bytes
 * unless chosen. Nothing is interpreted yet.
 *
 * @returns the cells, or what a person should do when the file is no table
 */
export async function readTable(
  bytes: Uint8Array,
  choice: TableChoice = {},
): Promise<Result<TableFile, string>> {
  if (bytes.length === 0) return err("The file is empty. Choose the file with the rows");
  if (isOldWorkbook(bytes))
    return err(
      "This is a workbook of the old kind (.xls), or one protected by a password. Save it as .xlsx without a password and load that file",
    );
  try {
    if (!isZip(bytes)) return ok(readText(bytes, choice));
    return ok({ format: "workbook", encoding: null, separator: null, sheets: readWorkbook(bytes) });
  } catch (error) {
    if (error instanceof UnreadableFile) return err(error.message);
    throw error;
  }
}
