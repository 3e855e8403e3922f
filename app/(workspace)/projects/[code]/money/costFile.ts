import { z } from "zod";
import type { DialectAnswers } from "@/lib/intake/settleDialect";

interface CostFileForm {
  readonly projectId: string;
  /** Null takes the rows pasted. */
  readonly file: File | null;
  readonly pasted: string;
  readonly answers: DialectAnswers;
}

/** The bytes handed in, by whichever way. */
export async function handedCosts({ file, pasted, ...rest }: CostFileForm) {
  const bytes = file ? new Uint8Array(await file.arrayBuffer()) : new TextEncoder().encode(pasted);
  return { ...rest, bytes, fileName: file?.name ?? "pasted rows" };
}

const MEBIBYTE = 1024 * 1024;
const MOST_BYTES = 5 * MEBIBYTE;
const KINDS = [".csv", ".txt", ".xlsx"];

const fields = z.object({
  projectId: z.uuid(),
  pasted: z.string().max(MOST_BYTES, "Paste less, or hand in a file."),
  decimalMark: z.enum(["point", "comma"]).optional(),
  dateOrder: z.enum(["dayFirst", "monthFirst"]).optional(),
});

/** What is wrong with a file before it is opened. */
function refusalOf(file: File): string | null {
  if (file.size > MOST_BYTES) return `The file has more than ${MOST_BYTES / MEBIBYTE} MB. Split it.`;
  if (file.name.length > 200) return "Shorten the file's name to 200 letters.";
  return KINDS.some((kind) => file.name.toLowerCase().endsWith(kind))
    ? null
    : `Choose a file that ends in ${KINDS.join(", ")}; save a spreadsheet as one of these.`;
}

/** The form that hands in orders and invoices: a file, or rows pasted from a sheet. */
export const costFile = z
  .custom<FormData>((form) => form instanceof FormData, "Hand in the form.")
  .transform((form, context): CostFileForm => {
    const wrong = (path: string, message: string) => {
      context.addIssue({ code: "custom", path: [path], message });
      return z.NEVER;
    };
    const text = (name: string) => form.get(name) || undefined;
    const read = fields.safeParse({
      ...{ projectId: text("projectId"), pasted: form.get("pasted") ?? "" },
      ...{ decimalMark: text("decimalMark"), dateOrder: text("dateOrder") },
    });
    if (!read.success) return wrong("pasted", read.error.issues[0]?.message ?? "Hand in the form.");
    const { projectId, pasted, ...answers } = read.data;
    const file = form.get("file");
    if (file instanceof File && file.size > 0) {
      const refusal = refusalOf(file);
      if (refusal !== null) return wrong("file", refusal);
      return { projectId, answers, pasted, file };
    }
    if (pasted.trim() === "") return wrong("file", "Choose a file, or paste rows with their column names.");
    return { projectId, answers, pasted, file: null };
  });
