import type { FieldKind } from "@/lib/intake/field";
import { missing, plainText, type RawCell, type Reading, refuse } from "@/lib/intake/reading";

/** Words and values files write for nothing known; a source may have its own list. */
export const NULL_WORDS: readonly string[] = [
  "-|--|---|–|—|.|..|...|?|??|/|n/a|n.a.|n.a|na|#n/a|null|nil|none|xxx|xx|tbd|t.b.d.|tba|unknown|not known|empty",
  "k.a.|k. a.|unbekannt|offen|fehlt|keine angabe|brak|brak danych|b/d|b.d.|nieznane|nieznany|nie dotyczy",
  "okänd|okänt|saknas|ej känt|desconocido|desconocida|s/d|sin dato|sin datos|pendiente|no aplica",
  "inconnu|inconnue|à définir|sans objet|néant|n.c.|sconosciuto|sconosciuta|da definire|non applicabile|n.d.|n/d",
].flatMap((words) => words.split("|"));

/** Stand-ins that look like a value; where a number or a date is expected they are taken as nothing. */
export const STAND_INS: readonly string[] = [
  "9999",
  "99999",
  "999999",
  "-9999",
  "1900-01-01",
  "1899-12-31",
  "1899-12-30",
  "9999-12-31",
];
const PLACEHOLDER_DATES = /^(?:0?1[./-]0?1[./-]1900|31[./-]12[./-]9999|12\/31\/9999|0?0[./-]0?1[./-]1900)$/;
const SHEET_ERROR =
  /^#(?:n\/a|ref!|value!|name\??|div\/0!|num!|null!|spill!|calc!|nv|wert!|bezug!|arg!|adr!|ej_sakn|nd|valor!|referens!|värde!)/i;
const MEASURED_KINDS: readonly FieldKind[] = [
  "integer",
  "decimal",
  "percent",
  "date",
  "dateTime",
  "endTime",
  "quantity",
  "year",
  "firmware",
];

/** Whether text would be run as a formula by a spreadsheet: a call, a reference to a sheet or a program. */
function isFormula(text: string, kind: FieldKind): boolean {
  if (/^[=+@-]\s*[\p{L}._]+\s*\(/u.test(text) || /^[=+@-].*[|!]/.test(text)) return true;
  // "=A1+B2-T3" is a reference designation, so a bare "=" tells nothing in a text or a code.
  return text.startsWith("=") && kind !== "text" && kind !== "code";
}

const KNOWN_NULLS: ReadonlySet<string> = new Set([...NULL_WORDS, ...STAND_INS]);
const sets = new WeakMap<readonly string[], ReadonlySet<string>>();

/** A source's own list as a set; made once for a list, since it is asked for every cell. */
function setOf(words: readonly string[] | undefined): ReadonlySet<string> {
  if (words === undefined) return KNOWN_NULLS;
  const made = sets.get(words) ?? new Set(words.map((word) => plainText(word).toLowerCase()));
  sets.set(words, made);
  return made;
}

/** A stand-in shows as a value, so taking it for nothing is said; in a text or a code digits are what they are. */
function isStandIn(text: string, kind: FieldKind, nulls: ReadonlySet<string>): boolean {
  const bare = text.replace(/(?:t| )00:00(?::00)?$/, "");
  if (!MEASURED_KINDS.includes(kind)) return nulls.has(bare) && /^\d{4}-\d{2}-\d{2}$/.test(bare);
  return nulls.has(bare) || (nulls.has("1900-01-01") && PLACEHOLDER_DATES.test(text));
}

/**
 * Finds cells that hold nothing: empty, a word for nothing, a stand-in number or date, a spreadsheet's error.
 *
 * @param nullWords Words and values that mean nothing, where a source has its own list.
 * @returns null when there is something to read
 */
export function readEmpty(
  cell: RawCell,
  kind: FieldKind,
  nullWords?: readonly string[],
): Exclude<Reading<never>, { state: "value" }> | null {
  const text = plainText(cell);
  const nulls = setOf(nullWords);
  const word = text.toLowerCase();
  if (text === "" || (nulls.has(word) && !/\d/.test(word) && word !== "#n/a")) return missing();
  if (SHEET_ERROR.test(text)) {
    return missing({
      problem: "The cell holds a spreadsheet's error, not a value",
      remedy: "Repair the formula in the file, or leave the cell empty",
    });
  }
  if (isFormula(text, kind)) {
    const problem = "The cell holds the text of a formula, not its result";
    const remedy = "Replace the formula by its value and load the file again";
    // A remark is not worth the row; what a code or a number would have said is missed.
    return kind === "text" ? missing({ problem, remedy }) : refuse(problem, remedy);
  }
  if (isStandIn(word, kind, nulls)) {
    return missing({
      problem: "The value looks like a stand-in for “not known” and was taken as such",
      remedy: "Leave the cell empty, or enter the true value",
    });
  }
  return null;
}
