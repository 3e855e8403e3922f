import { z } from "zod";
import { isRegisterKey, type RegisterKey } from "@/lib/intake/registers";

export interface RegisterFile {
  readonly register: RegisterKey;
  readonly file: File;
}

const MEBIBYTE = 1024 * 1024;
const MOST_BYTES = 50 * MEBIBYTE;
const LONGEST_NAME = 200;
const KINDS = [".csv", ".txt", ".xlsx"];

/** What is wrong with a file before it is opened. */
function refusalOf(file: FormDataEntryValue | null): string | null {
  // A field left empty arrives as a file of no bytes.
  if (!(file instanceof File) || file.size === 0) return "Choose a file that is not empty.";
  if (file.size > MOST_BYTES)
    return `The file has more than ${MOST_BYTES / MEBIBYTE} MB. Split it and load the pieces one after the other.`;
  if (file.name.length > LONGEST_NAME) return `Shorten the file's name to ${LONGEST_NAME} letters.`;
  if (!KINDS.some((kind) => file.name.toLowerCase().endsWith(kind)))
    return `Choose a file that ends in ${KINDS.join(", ")}; save a spreadsheet as one of these.`;
  return null;
}

/** The form that hands in a register file. */
export const registerFile = z
  .custom<FormData>((form) => form instanceof FormData, "Hand in the form.")
  .transform((form, context): RegisterFile => {
    const register = form.get("register");
    const file = form.get("file");
    const refusal = refusalOf(file);
    if (refusal !== null) context.addIssue({ code: "custom", path: ["file"], message: refusal });
    if (typeof register !== "string" || !isRegisterKey(register)) {
      context.addIssue({ code: "custom", path: ["register"], message: "Choose the register it holds." });
      return z.NEVER;
    }
    return file instanceof File ? { register, file } : z.NEVER;
  });
