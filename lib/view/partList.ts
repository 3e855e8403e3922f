import { addMonths, type IsoDate } from "@/lib/kernel/isoDate";
import type { SupplyStage } from "@/lib/lifecycle/supplyStage";
import type { ItemClass, Span } from "@/lib/risk/evaluation";

/** A part in the list of all parts. */
export interface ListedPart {
  readonly id: string;
  readonly maker: string;
  readonly number: string;
  readonly description: string;
  readonly itemClass: ItemClass;
  readonly family: string | null;
  readonly stage: SupplyStage;
  readonly lastOrderOn: IsoDate | null;
  /** Units at the reader's sites. */
  readonly installedHere: number;
  /** Units in the whole group. */
  readonly installed: number;
  /** Pieces in the whole group; null is not counted. */
  readonly book: number | null;
  readonly usable: number;
  /** Mean chance of an empty shelf over the next 12 months; null when not installed and not on a shelf. */
  readonly noSpare: Span | null;
  readonly depletionP80: IsoDate | null;
}

/** How a part is used, as a choice. */
export function installedWord({ installed, installedHere }: ListedPart): string {
  if (installed === 0) return "Not installed";
  return installedHere === 0 ? "Only at other sites" : "Installed";
}

/** What is on the shelf, as a choice; less than one piece expected to work is none. */
export function usableWord({ book, usable, noSpare }: ListedPart): string {
  if (book === null) return noSpare === null ? "No shelf" : "Not counted";
  if (usable < 1) return "Fewer than 1";
  return usable < 5 ? "1 to under 5" : "5 and more";
}

const BANDS = [
  { years: 1, word: "Within 1 year" },
  { years: 2, word: "Within 2 years" },
  { years: 5, word: "Within 5 years" },
] as const;

/** When the shelf is likely empty, as a choice, seen from a day. */
export function depletionWord({ depletionP80, noSpare }: ListedPart, asOf: IsoDate): string {
  if (noSpare === null) return "Not computed";
  if (depletionP80 === null) return "Beyond 5 years";
  const band = BANDS.find(({ years }) => depletionP80 <= addMonths(asOf, 12 * years));
  return band?.word ?? "Beyond 5 years";
}
