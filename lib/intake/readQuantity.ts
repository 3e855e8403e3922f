import type { DecimalMark } from "@/lib/intake/readDecimal";
import { readMarkedNumber } from "@/lib/intake/readDecimal";
import { infer, missing, plainText, type RawCell, type Reading, read, refuse } from "@/lib/intake/reading";

const ABOUT =
  /^(?:ca\.?|circa|approx\.?|approximately|about|etwa|ungefähr|ok\.?|około|ungefär|cirka|aprox\.?|unos|~|≈)\s*(\d+)$/i;
const PIECES =
  /^(?:pcs?\.?|pieces?|pc|ea|each|st\.?|stk\.?|stck\.?|stück|szt\.?|sztuk|pza?s?\.?|piezas?|uds?\.?)$/i;
const SUM = /^\d+(?:\s*\+\s*\d+)+$/;
const REMARK = /^(\d+)\s*[([]([^)\]]*)[)\]]$/;

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
  if (remark?.[1]) {
    return infer(Number(remark[1]), {
      problem: `The remark “${remark[2] ?? ""}” says that not all pieces are alike`,
      remedy: "Split the row: one row for each state",
    });
  }
  return null;
}

/**
 * Reads a count of pieces: a whole number from 0. "2+1" is added up, "ca. 5" is an estimate; what is no
 * count is not known. A count below zero or a fraction is refused.
 */
export function readQuantity(cell: RawCell, mark: DecimalMark): Reading<number> {
  const text = plainText(cell);
  const spoken = readSpokenQuantity(text);
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
  return read(value);
}
