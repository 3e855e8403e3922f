import { type BasisWord, basisOf } from "@/lib/intake/quantityBasis";
import { readDate } from "@/lib/intake/readDate";
import { readMarkedNumber } from "@/lib/intake/readDecimal";
import { readQuantity } from "@/lib/intake/readQuantity";
import { count, plainNumber } from "@/lib/view/number";
import { day } from "@/lib/view/time";

/** One way to read a file's numbers or dates. */
export interface WayToRead {
  readonly value: "comma" | "point" | "dayFirst" | "monthFirst" | BasisWord;
  readonly label: string;
}

type Custom = "decimalMark" | "dateOrder" | "quantityBasis";

const WAYS: Readonly<Record<Custom, readonly WayToRead[]>> = {
  decimalMark: [
    { value: "comma", label: "Decimal comma" },
    { value: "point", label: "Decimal point" },
  ],
  dateOrder: [
    { value: "dayFirst", label: "Day first" },
    { value: "monthFirst", label: "Month first" },
  ],
  quantityBasis: [
    { value: "total", label: "Pieces on the shelf" },
    { value: "perMachine", label: "Pieces in each machine" },
    { value: "sets:2", label: "Sets of 2" },
    { value: "sets:3", label: "Sets of 3" },
    { value: "sets:4", label: "Sets of 4" },
    { value: "sets:6", label: "Sets of 6" },
  ],
};

/** The ways a custom knows, without an example. */
export function waysToRead(custom: Custom): readonly WayToRead[] {
  return WAYS[custom];
}

/** What a value means when read one way: `3 Apr 2026`, `1 234`; null when it cannot be read so. */
export function meaningOf(example: string, way: WayToRead["value"]): string | null {
  if (way === "comma" || way === "point") {
    const number = readMarkedNumber(example, way);
    if (number.state !== "value") return null;
    const { value } = number.value;
    return plainNumber(value, String(value).split(".")[1]?.length ?? 0);
  }
  if (way !== "dayFirst" && way !== "monthFirst") return piecesOf(example, way);
  const date = readDate(example.split(/[ T,]/)[0] ?? "", way);
  return date.state === "value" ? day(date.value.on) : null;
}

function piecesOf(example: string, way: BasisWord): string {
  const basis = basisOf(way, "");
  const counted = readQuantity(example, "point", basis.kind === "sets" ? { ...basis, bareToo: true } : basis);
  return counted.state === "value" ? count(counted.value, "piece") : "not known";
}
