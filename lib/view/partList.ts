import { z } from "zod";
import type { IsoDate } from "@/lib/kernel/isoDate";
import { SUPPLY_STAGES, type SupplyStage } from "@/lib/lifecycle/supplyStage";
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

const first = (value: unknown) => (Array.isArray(value) ? value[0] : value);
const ITEM_CLASSES = [
  "drive",
  "motor",
  "controller",
  "power_supply",
  "io",
  "hmi",
  "converter",
  "network_card",
] as const satisfies readonly ItemClass[];

/** What the address says about the parts list; anything it cannot mean is left out. */
export const partQuery = z.object({
  class: z.preprocess(first, z.enum(["", ...ITEM_CLASSES]).catch("")),
  maker: z.preprocess(first, z.string().max(100).catch("")),
  stage: z.preprocess(first, z.enum(["", ...SUPPLY_STAGES]).catch("")),
  installed: z.preprocess(first, z.enum(["", "yes", "no"]).catch("")),
  usable: z.preprocess(first, z.enum(["", "none", "some"]).catch("")),
  depletion: z.preprocess(first, z.enum(["", "1", "2", "5", "later"]).catch("")),
  q: z.preprocess(first, z.string().trim().max(100).catch("")),
});

export type PartQuery = z.output<typeof partQuery>;

/** Less than one whole piece is expected to work. */
const isEmptyShelf = (part: ListedPart) => part.usable < 1;

/** The parts that match all the filters. */
export function filterParts(
  parts: readonly ListedPart[],
  query: PartQuery,
  asOf: IsoDate,
): readonly ListedPart[] {
  const tests: ((part: ListedPart) => boolean)[] = [];
  if (query.class !== "") tests.push((part) => part.itemClass === query.class);
  if (query.maker !== "") tests.push((part) => part.maker === query.maker);
  if (query.stage !== "") tests.push((part) => part.stage === query.stage);
  if (query.installed !== "") tests.push((part) => part.installed > 0 === (query.installed === "yes"));
  if (query.usable !== "") tests.push((part) => isEmptyShelf(part) === (query.usable === "none"));
  if (query.depletion !== "") tests.push((part) => runsOutWithin(part, query.depletion, asOf));
  if (query.q !== "") tests.push((part) => textOf(part).includes(fold(query.q)));
  return parts.filter((part) => tests.every((test) => test(part)));
}

function runsOutWithin({ depletionP80 }: ListedPart, within: string, asOf: IsoDate): boolean {
  if (within === "later") return depletionP80 === null;
  const last = `${String(Number(asOf.slice(0, 4)) + Number(within)).padStart(4, "0")}${asOf.slice(4)}`;
  return depletionP80 !== null && depletionP80 <= last;
}

/** Upper case without dashes and spaces, so that TMHR020 finds TM-HR-020. */
function fold(text: string): string {
  return text
    .normalize("NFKC")
    .toLocaleUpperCase("en")
    .replace(/[^\p{L}\p{N}]+/gu, "");
}

function textOf({ number, maker, description, family }: ListedPart): string {
  return [number, maker, description, family ?? ""].map(fold).join("\n");
}
