import type { DecimalMark } from "@/lib/intake/readDecimal";
import { readMarkedNumber } from "@/lib/intake/readDecimal";
import { infer, missing, plainText, type RawCell, type Reading, read, refuse } from "@/lib/intake/reading";

const ABOUT =
  /^(?:ca\.?|circa|approx\.?|approximately|about|etwa|ungefähr|ok\.?|około|ungefär|cirka|aprox\.?|unos|~|≈)\s*(\d+)$/i;
const PIECES =
  /^(?:pcs?\.?|pieces?|pc|ea|each|st\.?|stk\.?|stck\.?|stück|szt\.?|sztuk|pza?s?\.?|piezas?|uds?\.?)$/i;
const SUM = /^\d+(?:\s*\+\s*\d+)+$/;
const REMARK = /^(\d+)\s*[([]([^)\]]*)[)\]]$/;
const SPOILT =
  /^(\d+)\s*(?:x\s*)?(?:def|defe[ck]t\p{L}*|faulty|broken|bad|scrap|kaputt|ausschuss|uszk\p{L}*|zepsut\p{L}*|trasig\p{L}*|averiad\p{L}*|hs|guast\p{L}*)\b\.?$/iu;

/** What a quantity of the file counts: pieces, pieces in each machine, or sets of so many. */
export type QuantityBasis =
  | { readonly kind: "total" }
  | { readonly kind: "perMachine" }
  /** `bareToo`: numbers without a word count sets as well, since the column's name says so. */
  | { readonly kind: "sets"; readonly size: number; readonly bareToo: boolean };

function notCounted(text: string): Reading<number> {
  return missing({
    problem: `“${text}” is not a count; the quantity is kept as not known, which is not zero`,
    remedy: "Count the shelf and enter a whole number",
  });
}

/** Written quantities that say more or less than one number; null when the text is none of them. */
function readSpokenQuantity(text: string): Reading<number> | null {
  if (SUM.test(text)) {
    const total = text.split("+").reduce((sum, part) => sum + Number(part), 0);
    return infer(total, {
      problem: `“${text}” was added up to ${total}`,
      remedy: "Give each lot a row of its own when the lots differ in state",
    });
  }
  const about = ABOUT.exec(text);
  if (about?.[1]) {
    return infer(Number(about[1]), {
      problem: `“${text}” is an estimate`,
      remedy: "Count the shelf and enter the count",
    });
  }
  const remark = REMARK.exec(text);
  if (remark?.[1]) return readRemark(Number(remark[1]), remark[2] ?? "");
  return null;
}

/** Pieces with a remark: those it calls defective are taken off, any other remark only asks for rows of their own. */
function readRemark(pieces: number, remark: string): Reading<number> {
  const spoilt = Number(SPOILT.exec(remark.trim())?.[1] ?? 0);
  if (spoilt > 0 && spoilt <= pieces) {
    return infer(pieces - spoilt, {
      problem: `Of ${pieces} pieces ${spoilt} are said to be defective (“${remark}”); ${pieces - spoilt} are counted`,
      remedy: "Split the row: one row for each state",
    });
  }
  return infer(pieces, {
    problem: `The remark “${remark}” says that not all pieces are alike`,
    remedy: "Split the row: one row for each state",
  });
}

const SETS =
  /^(\d+)\s*(?:x\s*)?(?:sets?|satz|sätze|kpl\.?|komplet\p{L}*|juegos?|jeux?|set di|sats(?:er)?|pairs?|paare?|par[ay]?)$/iu;
const SETS_OF =
  /^(\d+)\s*(?:x\s*)?(?:sets?|satz|sätze|kpl\.?|komplet\p{L}*|juegos?|jeux?|sats(?:er)?) (?:of|à|zu|po|de|om|da) (\d+)$/iu;

/** Whether a text counts sets and does not say of how many pieces. */
export function isInSets(text: string): boolean {
  return SETS.test(text);
}

/** Sets become pieces when the cell says of how many, or a person did. */
function readSets(text: string, basis: QuantityBasis): Reading<number> | null {
  const full = SETS_OF.exec(text);
  const sets = full ?? SETS.exec(text);
  if (!sets?.[1]) return null;
  const size = full?.[2] ? Number(full[2]) : basis.kind === "sets" ? basis.size : null;
  return size === null ? notCounted(text) : inSets(Number(sets[1]), size, text);
}

function inSets(sets: number, size: number, text: string): Reading<number> {
  return infer(sets * size, {
    problem: `“${text}” is ${sets} sets of ${size}: ${sets * size} pieces`,
    remedy: "Give pieces in the file",
  });
}

/** Pieces as the file's basis has them. A number for each machine is no count of a shelf. */
function onBasis(pieces: number, basis: QuantityBasis, text: string): Reading<number> {
  if (basis.kind === "sets") return basis.bareToo ? inSets(pieces, basis.size, text) : read(pieces);
  if (basis.kind === "total") return read(pieces);
  return missing({
    problem: `“${text}” is the number in each machine, not what lies on the shelf; the quantity is kept as not known`,
    remedy: "Give a column with the pieces on the shelf",
  });
}

/**
 * Reads a count of pieces: a whole number from 0. "2+1" is added up, "ca. 5" is an estimate; what is no
 * count is not known. A count below zero or a fraction is refused. Pieces in sets are multiplied out.
 */
export function readQuantity(
  cell: RawCell,
  mark: DecimalMark,
  basis: QuantityBasis = { kind: "total" },
): Reading<number> {
  const text = plainText(cell);
  const spoken = readSets(text, basis) ?? readSpokenQuantity(text);
  if (spoken !== null) return spoken;
  const found = readMarkedNumber(cell, mark);
  if (found.state !== "value") return notCounted(text);
  const { value, mark: word } = found.value;
  if (word !== "" && !PIECES.test(word)) return notCounted(text);
  if (value < 0) {
    return refuse(
      "The quantity is below zero",
      "Clear the open bookings in the storeroom's system, or enter the count",
    );
  }
  if (!Number.isSafeInteger(value)) return refuse("The quantity is not whole", "Enter whole pieces");
  return onBasis(value, basis, text);
}
