import { type IsoDate, yearsBetween } from "@/lib/kernel/isoDate";
import type { InstalledSpan } from "@/lib/spares/exposure";
import {
  type BuyCase,
  type BuyRates,
  type GroupBuy,
  type NeededPart,
  type NoticeBuy,
  noticeBuy,
} from "@/lib/spares/noticeBuy";
import type { BuyBasis, BuyPart, LineUnits, PartAtSite } from "@/lib/view/lastBuyBasis";

/** Common practice, no source: what keeping a unit costs a year, what it fetches at the end, and the years looked over. */
export const BUY_TERMS = { holdingShare: 0.12, salvageShare: 0.125, horizonYears: 5, level: 0.975 } as const;

/** What is supposed on the sheet instead of what the records say. */
export interface Supposed {
  /** Year in which a line is retrofitted, by its code; for units no project takes out. */
  readonly planYears: Readonly<Record<string, number>>;
  /** One level of service for every part; null follows the costs. */
  readonly level: number | null;
}

export const NOTHING_SUPPOSED: Supposed = { planYears: {}, level: null };

export interface LastBuySheet {
  readonly parts: readonly NeededPart[];
  readonly rates: BuyRates;
  /** Parts priced by the level alone, as a cost per hour or a price is missing. */
  readonly unpriced: readonly string[];
  /** Share of the units that leave on a planned or supposed day. */
  readonly plannedShare: number;
}

const sum = (values: readonly number[]) => values.reduce((all, value) => all + value, 0);

/** Cost of one unit too many: bought, kept over half of the horizon on average, and sold for little. */
function overCost(price: number): number {
  const { holdingShare, salvageShare, horizonYears } = BUY_TERMS;
  return price * (1 + (holdingShare * horizonYears) / 2 - salvageShare);
}

/** Stands in for a price nobody knows; with the level alone only its being one and the same matters. */
function meanPrice(parts: readonly BuyPart[]): number {
  const known = parts.flatMap(({ price }) => (price !== null && price > 0 ? [price] : []));
  return known.length === 0 ? 1 : sum(known) / known.length;
}

/** The middle of a planned year stands for its windows; own choice. */
const middleOf = (year: number): IsoDate => `${year}-07-01`;

function spansOf(
  { lineCode, units, leaving }: LineUnits,
  asOf: IsoDate,
  { planYears }: Supposed,
): InstalledSpan[] {
  const year = planYears[lineCode];
  const going = leaving.map(({ on, units: some }) => ({ from: 0, to: yearsBetween(asOf, on), units: some }));
  const left = units - sum(going.map((span) => span.units));
  const to = year === undefined ? null : Math.max(0, yearsBetween(asOf, middleOf(year)));
  return left > 0 ? [...going, { from: 0, to, units: left }] : going;
}

function neededPart(
  { asOf, parts }: BuyBasis,
  { partId, siteId, lines, usable, more, supply }: PartAtSite,
  supposed: Supposed,
): NeededPart & { priced: boolean } {
  const price = parts.find(({ id }) => id === partId)?.price ?? null;
  const known = price !== null && price > 0 && more !== null && more > 0;
  const over = overCost(price ?? meanPrice(parts));
  const level = supposed.level ?? BUY_TERMS.level;
  const byCost = known && supposed.level === null;
  return {
    ...{ partId, siteId, usable, priced: known },
    supply: { ...supply, installed: lines.flatMap((line) => spansOf(line, asOf, supposed)) },
    underCost: byCost ? more : (over * level) / (1 - level),
    overCost: over,
  };
}

/** Everything the buy of a family rests on, ready to be priced by case. */
export function lastBuySheet(basis: BuyBasis, supposed: Supposed = NOTHING_SUPPOSED): LastBuySheet {
  const numbers = new Map(basis.parts.map(({ id, number }) => [id, number]));
  const parts = basis.needs.map((need) => neededPart(basis, need, supposed));
  const spans = parts.flatMap(({ supply }) => supply.installed);
  const units = sum(spans.map((span) => span.units));
  return {
    parts,
    rates: { family: basis.familyRate, parts: new Map(Object.entries(basis.partRates)) },
    unpriced: [
      ...new Set(parts.filter(({ priced }) => !priced).map(({ partId }) => numbers.get(partId) ?? partId)),
    ],
    plannedShare:
      units === 0 ? 0 : sum(spans.filter(({ to }) => to !== null).map((span) => span.units)) / units,
  };
}

export interface CaseRow {
  readonly asked: BuyCase;
  readonly label: string;
  readonly buy: NoticeBuy;
}

const SHARING = {
  family: "All parts of the family are one",
  part: "Each part for itself, shared by all sites",
  site: "Each site for itself",
} as const;

/** What the sheet begins with. */
export const FIRST_CASE: BuyCase = {
  sharing: "part",
  repaired: true,
  slipYears: 0,
  horizonYears: BUY_TERMS.horizonYears,
};

/** The case with every retrofit so many years late; units without a date are provided for as much longer. */
export function slipped(asked: BuyCase, slipYears: number): BuyCase {
  return { ...asked, slipYears, horizonYears: BUY_TERMS.horizonYears + slipYears };
}

/** The case asked for, then the same question with one assumption changed at a time. */
export function buyCases({ parts, rates }: LastBuySheet, asked: BuyCase = FIRST_CASE): CaseRow[] {
  const others = (["part", "family", "site"] as const).filter((sharing) => sharing !== asked.sharing);
  const cases: BuyCase[] = [
    asked,
    ...others.map((sharing) => ({ ...asked, sharing })),
    slipped(asked, asked.slipYears + 1),
    { ...asked, repaired: !asked.repaired },
  ];
  return cases.map((one) => ({ asked: one, label: caseLabel(one), buy: noticeBuy(parts, rates, one) }));
}

/** A case in words. */
export function caseLabel({ sharing, repaired, slipYears }: BuyCase): string {
  const late = slipYears === 1 ? "every retrofit a year late" : `every retrofit ${slipYears} years late`;
  const more = [repaired ? "" : "repair stops", slipYears > 0 ? late : ""];
  return [SHARING[sharing], ...more.filter((text) => text !== "")].join(", ");
}

/** EUR of a buy at the parts' own prices; null when a price is missing or the parts are not told apart. */
export function priceOfBuy({ groups }: Pick<NoticeBuy, "groups">, parts: readonly BuyPart[]): number | null {
  const prices = new Map(parts.map(({ id, price }) => [id, price]));
  const all = groups.map(({ partIds, quantity }) => {
    const [only, ...more] = partIds;
    const price = only === undefined || more.length > 0 ? null : (prices.get(only) ?? null);
    return quantity === 0 ? 0 : price === null ? null : quantity * price;
  });
  return all.every((one) => one !== null) ? sum(all.map((one) => one ?? 0)) : null;
}

/** What a group is called: its part, its part and site, or the family. */
export function groupName(
  { partIds, siteIds }: Pick<GroupBuy, "partIds" | "siteIds">,
  { parts, sites, family }: Pick<BuyBasis, "parts" | "sites" | "family">,
  sharing: BuyCase["sharing"],
): string {
  if (sharing === "family") return family.name;
  const number = parts.find(({ id }) => id === partIds[0])?.number ?? "";
  return sharing === "part" ? number : `${number} ${sites[siteIds[0] ?? ""] ?? ""}`;
}
