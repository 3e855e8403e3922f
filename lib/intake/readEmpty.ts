import type { FieldKind } from "@/lib/intake/field";
import { missing, plainText, type RawCell, type Reading, refuse } from "@/lib/intake/reading";

const NULL_WORDS = new Set(
  [
    "-|--|---|–|—|.|..|...|?|??|/|n/a|n.a.|n.a|na|#n/a|null|nil|none|xxx|xx|tbd|t.b.d.|tba|unknown|not known|empty",
    "k.a.|k. a.|unbekannt|offen|fehlt|keine angabe|brak|brak danych|b/d|b.d.|nieznane|nieznany|nie dotyczy",
    "okänd|okänt|saknas|ej känt|desconocido|desconocida|s/d|sin dato|sin datos|pendiente|no aplica",
  ].flatMap((words) => words.split("|")),
);

const PLACEHOLDERS = new Set([
  "9999",
  "99999",
  "999999",
  "-9999",
  "1900-01-01",
  "1899-12-31",
  "1899-12-30",
  "9999-12-31",
]);
const PLACEHOLDER_DATES = /^(?:0?1[./-]0?1[./-]1900|31[./-]12[./-]9999|12\/31\/9999|0?0[./-]0?1[./-]1900)$/;
const SHEET_ERROR =
  /^#(?:n\/a|ref!|value!|name\??|div\/0!|num!|null!|spill!|calc!|nv|wert!|bezug!|arg!|adr!|ej_sakn|nd|valor!|referens!|värde!)/i;
const MEASURED_KINDS: readonly FieldKind[] = [
  "integer",
  "decimal",
  "percent",
  "date",
  "dateTime",
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

function isPlaceholder(text: string, kind: FieldKind): boolean {
  if (!MEASURED_KINDS.includes(kind)) return text === "1900-01-01" || text === "9999-12-31";
  return PLACEHOLDERS.has(text.replace(/(?:T| )00:00(?::00)?$/, "")) || PLACEHOLDER_DATES.test(text);
}

/**
 * Finds cells that hold nothing: empty, a word for nothing, a stand-in number or date, a spreadsheet's error.
 *
 * @returns null when there is something to read
 */
export function readEmpty(
  cell: RawCell,
  kind: FieldKind,
): Exclude<Reading<never>, { state: "value" }> | null {
  const text = plainText(cell);
  if (text === "" || NULL_WORDS.has(text.toLowerCase())) {
    if (text.toLowerCase() !== "#n/a") return missing();
  }
  if (SHEET_ERROR.test(text)) {
    return missing({
      problem: "The cell holds a spreadsheet's error, not a value",
      remedy: "Repair the formula in the file, or leave the cell empty",
    });
  }
  if (isFormula(text, kind)) {
    return refuse(
      "The cell holds the text of a formula, not its result",
      "Replace the formula by its value and load the file again",
    );
  }
  if (isPlaceholder(text, kind)) {
    return missing({
      problem: "The value looks like a stand-in for “not known” and was taken as such",
      remedy: "Leave the cell empty, or enter the true value",
    });
  }
  return null;
}
