import { z } from "zod";
import { isIsoDate } from "@/lib/kernel/isoDate";

const day = z.string().refine(isIsoDate, "Write a day that exists, as 2027-04-30.");
/** A field left empty is not known. */
const maybeDay = z.union([z.literal("").transform(() => null), day]);
const words = (most: number) => z.string().trim().max(most, `Use at most ${most} characters.`);
const weeks = z
  .number("Write weeks, such as 3.")
  .min(0, "Write 0 weeks or more.")
  .max(104, "At most 104 weeks.")
  .multipleOf(0.5, "Write whole or half weeks.");

/** A notice as a person confirms it. */
export const noticeFields = z
  .strictObject({
    maker: words(120),
    document: words(200).min(1, "Name the document: the dates rest on it."),
    patterns: words(4000).min(1, "Say which parts: a number, a family or a pattern."),
    successor: words(120),
    ...{ noticeOn: maybeDay, lastOrderOn: maybeDay, lastShipOn: maybeDay, repairUntilOn: maybeDay },
    ...{ quoteWeeks: weeks, approvalWeeks: weeks, purchaseWeeks: weeks },
    checkedOn: day,
    evidence: z.enum(["measured", "documented", "inferred", "assumed"]),
    note: words(1000),
  })
  .refine((one) => one.noticeOn ?? one.lastOrderOn ?? one.lastShipOn ?? one.repairUntilOn, {
    path: ["lastOrderOn"],
    message: "Write at least one day.",
  });

export type NoticeFields = z.output<typeof noticeFields>;
export type TypedNotice = z.input<typeof noticeFields>;

const MEBIBYTE = 1024 * 1024;
const MOST_BYTES = 20 * MEBIBYTE;
const KINDS = [".txt", ".csv", ".xlsx"];

/** A notice as received. */
export interface NoticeSource {
  /** Null was pasted. */
  readonly fileName: string | null;
  readonly bytes: () => Promise<Uint8Array<ArrayBuffer>>;
}

function sourceRefusal(file: File): string | null {
  if (file.size > MOST_BYTES) return `The file has more than ${MOST_BYTES / MEBIBYTE} MB.`;
  if (file.name.length > 200) return "Shorten the file's name to 200 letters.";
  return KINDS.some((kind) => file.name.toLowerCase().endsWith(kind))
    ? null
    : `Choose a file that ends in ${KINDS.join(", ")}, or paste the text of the document.`;
}

function sourceOf(form: FormData, context: z.RefinementCtx): NoticeSource | null {
  const [file, text] = [form.get("file"), form.get("text")];
  if (file instanceof File && file.size > 0) {
    const refusal = sourceRefusal(file);
    if (refusal !== null) context.addIssue({ code: "custom", path: ["file"], message: refusal });
    return { fileName: file.name, bytes: async () => new Uint8Array(await file.arrayBuffer()) };
  }
  if (typeof text !== "string" || text.trim() === "") return null;
  return { fileName: null, bytes: async () => new TextEncoder().encode(text) };
}

const form = z.custom<FormData>((given) => given instanceof FormData, "Hand in the form.");

/** The notice to be read: its text or its file. */
export const noticeSource = form.transform((given, context): NoticeSource => {
  const source = sourceOf(given, context);
  if (source) return source;
  context.addIssue({ code: "custom", path: ["text"], message: "Paste the text or choose a file." });
  return z.NEVER;
});

/** Fields a form carries as JSON; what is no JSON is nothing. */
function fieldsOf(form: FormData): unknown {
  try {
    return JSON.parse(String(form.get("fields")));
  } catch {
    return null;
  }
}

/** A confirmed notice, the source it was read from, and what the records were when it was looked over. */
export const recordNotice = form.transform((given, context) => {
  const read = noticeFields.safeParse(fieldsOf(given));
  for (const { path, message } of read.success ? [] : read.error.issues)
    context.addIssue({ code: "custom", path, message });
  const source = sourceOf(given, context);
  return read.success ? { fields: read.data, basis: String(given.get("basis") ?? ""), source } : z.NEVER;
});

export const takeNoticeBack = z.strictObject({ noticeId: z.uuid() });

export type RecordNotice = z.output<typeof recordNotice>;
export type TakeNoticeBack = z.output<typeof takeNoticeBack>;
