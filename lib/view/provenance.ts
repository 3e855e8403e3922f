import { storedFieldWord } from "@/lib/view/importWords";
import { moment } from "@/lib/view/time";

/** One thing that made a stored thing what it is, newest first. */
export type Origin =
  | {
      readonly kind: "file";
      readonly batchId: string;
      readonly fileName: string;
      readonly rowNumber: number;
      /** RFC 3339. */
      readonly at: string;
      readonly by: string;
      /** Fields the row changed; null where it made the whole thing. */
      readonly fields: readonly string[] | null;
    }
  | { readonly kind: "hand"; readonly at: string; readonly by: string; readonly fields: readonly string[] };

/** An origin as a sentence. */
export function originInWords(origin: Origin): string {
  const when = `${moment(origin.at, "UTC")} UTC by ${origin.by}`;
  if (origin.kind === "hand") return `${fieldsInWords(origin.fields, "Changed")} by hand on ${when}`;
  const from = `${origin.fileName}, row ${origin.rowNumber}, loaded on ${when}`;
  return origin.fields === null ? `From ${from}` : `${fieldsInWords(origin.fields, "Changed")} from ${from}`;
}

function fieldsInWords(fields: readonly string[], otherwise: string): string {
  if (fields.length === 0) return otherwise;
  const words = fields.map(storedFieldWord).join(", ");
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}`;
}

/** What is said of a thing no file and no person on record made. */
export const NO_ORIGIN = "No loaded file and no edit on record made this; it was there from the start.";
