import { z } from "zod";

const LONGEST_NAME = 200;
const KINDS = [".csv", ".txt", ".xlsx"];

/** The most a register file may weigh, bytes; a workbook has to be unpacked whole, text is read as it comes. */
export interface FileLimits {
  readonly text: number;
  readonly workbook: number;
}

const MEBIBYTE = 1024 * 1024;

/** What is said of a file that is too large, whichever way that was found. */
export function tooLarge(most: number): string {
  return `The file has more than ${Math.floor(most / MEBIBYTE)} MB. Split it and load the pieces one after the other.`;
}

function refusalOf(name: string, size: number, limits: FileLimits): string | null {
  const lower = name.toLowerCase();
  if (size === 0) return "Choose a file that is not empty.";
  if (name.length > LONGEST_NAME) return `Shorten the file's name to ${LONGEST_NAME} letters.`;
  if (!KINDS.some((kind) => lower.endsWith(kind)))
    return `Choose a file that ends in ${KINDS.join(", ")}; save a spreadsheet as one of these.`;
  const most = lower.endsWith(".xlsx") ? limits.workbook : limits.text;
  return size > most ? tooLarge(most) : null;
}

/** A register file as it is announced before its bytes come. */
export const registerFile = (limits: FileLimits) =>
  z
    .strictObject({
      register: z.string(),
      name: z.string(),
      size: z.int().nonnegative(),
    })
    .superRefine(({ register, name, size }, context) => {
      if (register === "")
        context.addIssue({ code: "custom", path: ["register"], message: "Choose the register it holds." });
      const refusal = refusalOf(name, size, limits);
      if (refusal !== null) context.addIssue({ code: "custom", path: ["file"], message: refusal });
    });
