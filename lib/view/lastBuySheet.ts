import { type IsoDate, yearsBetween } from "@/lib/kernel/isoDate";
import type { GammaRate } from "@/lib/reliability/rate";
import type { Assumptions } from "@/lib/risk/assumptions";
import type { ItemClass, PoolFigures, PoolInput } from "@/lib/risk/evaluation";
import type { InstalledSpan } from "@/lib/spares/exposure";
import {
  type BuyCase,
  type BuyRates,
  type NeededPart,
  type NoticeBuy,
  noticeBuy,
} from "@/lib/spares/noticeBuy";

export interface InstalledPart {
  readonly partId: string;
  readonly siteId: string;
  readonly units: number;
}

/** EUR a stop costs more without a spare than with one, at one line. */
export interface MissingCost extends InstalledPart {
  readonly more: number;
}

export interface LastBuyInput {
  readonly asOf: IsoDate;
  readonly family: {
    readonly id: string;
    readonly maker: string;
    readonly name: string;
    readonly itemClass: ItemClass;
  };
  /** Price in EUR; null is not known. */
  readonly parts: readonly {
    readonly id: string;
    readonly number: string;
    readonly price: number | null;
    readonly pricedOn: IsoDate | null;
  }[];
  readonly pools: readonly PoolInput[];
  readonly results: Readonly<Record<string, PoolFigures>>;
  readonly installed: readonly InstalledPart[];
  readonly leaving: readonly (InstalledPart & { readonly on: IsoDate })[];
  readonly costs: readonly MissingCost[];
  /** Codes of the reader's sites by id. */
  readonly sites: Readonly<Record<string, string>>;
  readonly everySite: boolean;
  readonly assumptions: Assumptions;
}

/** Common practice, no source: what keeping a unit costs a year, what it fetches at the end, and the years looked over. */
export const BUY_TERMS = { holdingShare: 0.12, salvageShare: 0.125, horizonYears: 5, level: 0.975 } as const;

export interface LastBuySheet {
  readonly parts: readonly NeededPart[];
  readonly rates: BuyRates;
  /** Parts priced by the level alone, as a cost per hour or a price is missing. */
  readonly unpriced: readonly string[];
  readonly lastOrderOn: IsoDate | null;
  readonly orderByOn: IsoDate | null;
}

const sum = (values: readonly number[]) => values.reduce((all, value) => all + value, 0);

/** Cost of one unit too many: bought, kept over half of the horizon on average, and sold for little. */
function overCost(price: number): number {
  const { holdingShare, salvageShare, horizonYears } = BUY_TERMS;
  return price * (1 + (holdingShare * horizonYears) / 2 - salvageShare);
}

/** Stands in for a price nobody knows; with the level alone only its being one and the same matters. */
function meanPrice({ parts }: LastBuyInput): number {
  const known = parts.flatMap(({ price }) => (price !== null && price > 0 ? [price] : []));
  return known.length === 0 ? 1 : sum(known) / known.length;
}

function meanMore({ costs }: LastBuyInput, partId: string, siteId: string): number | null {
  const own = costs.filter((cost) => cost.partId === partId && cost.siteId === siteId);
  const units = sum(own.map((cost) => cost.units));
  return units === 0 ? null : sum(own.map((cost) => cost.units * cost.more)) / units;
}

function spansOf({ leaving, asOf }: LastBuyInput, { partId, siteId, units }: InstalledPart): InstalledSpan[] {
  const own = leaving.filter((one) => one.partId === partId && one.siteId === siteId);
  const spans: InstalledSpan[] = [];
  let left = units;
  for (const { on, units: going } of own) {
    const counted = Math.min(left, going);
    if (counted > 0) spans.push({ from: 0, to: yearsBetween(asOf, on), units: counted });
    left -= counted;
  }
  return left > 0 ? [...spans, { from: 0, to: null, units: left }] : spans;
}

function neededPart(
  input: LastBuyInput,
  here: InstalledPart,
  price: number | null,
): NeededPart & { priced: boolean } {
  const { partId, siteId } = here;
  const pool = input.pools.find(({ id }) => id === partId);
  const dates = pool?.dates;
  const more = meanMore(input, partId, siteId);
  const priced = price !== null && price > 0 && more !== null && more > 0;
  const over = overCost(price ?? meanPrice(input));
  const yearsTo = (day: IsoDate | null | undefined) => (day ? yearsBetween(input.asOf, day) : null);
  return {
    ...{ partId, siteId, priced },
    usable: input.results[partId]?.usableBySite[siteId]?.usable ?? 0,
    supply: {
      installed: spansOf(input, here),
      leadTime: pool?.leadYears ?? input.assumptions.classes[input.family.itemClass].leadYears,
      lastOrderAt: yearsTo(dates?.lastOrderOn) ?? 0,
      repair: pool?.repair
        ? {
            turnaround: pool.repair.turnaroundYears,
            yield: pool.repair.yield,
            untilAt: yearsTo(dates?.repairUntilOn ?? dates?.lastShipOn),
          }
        : null,
    },
    underCost: priced ? more : (over * BUY_TERMS.level) / (1 - BUY_TERMS.level),
    overCost: over,
  };
}

/** The family's rate: its mean as the parts borrow it, at the weight of all their unit-years and the class belief. */
function familyRate({ results, assumptions, family }: LastBuyInput): GammaRate {
  const rates = Object.values(results).map(({ removal }) => removal);
  const { rateUnitYears, removalRate } = assumptions.classes[family.itemClass];
  const b = rateUnitYears + sum(rates.map(({ unitYears }) => unitYears));
  return { a: (rates[0]?.priorMean ?? removalRate) * b, b };
}

/** Everything the buy of a family rests on, ready to be priced by case. */
export function lastBuySheet(input: LastBuyInput): LastBuySheet {
  const prices = new Map(input.parts.map(({ id, price }) => [id, price]));
  const numbers = new Map(input.parts.map(({ id, number }) => [id, number]));
  const parts = input.installed.map((here) => neededPart(input, here, prices.get(here.partId) ?? null));
  const earliest = (pick: (dates: PoolInput["dates"]) => IsoDate | null) =>
    input.pools
      .flatMap(({ dates }) => pick(dates) ?? [])
      .sort()
      .at(0) ?? null;
  return {
    parts,
    rates: {
      family: familyRate(input),
      parts: new Map(
        Object.entries(input.results).map(([id, { removal }]) => [id, { a: removal.a, b: removal.b }]),
      ),
    },
    unpriced: [
      ...new Set(parts.filter(({ priced }) => !priced).map(({ partId }) => numbers.get(partId) ?? partId)),
    ],
    lastOrderOn: earliest(({ lastOrderOn }) => lastOrderOn),
    orderByOn: earliest(({ orderByOn }) => orderByOn),
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

/** The same question under each assumption that matters: who shares, whether repair goes on, a slip of a year. */
export function buyCases({ parts, rates }: LastBuySheet): CaseRow[] {
  const base: BuyCase = {
    sharing: "part",
    repaired: true,
    slipYears: 0,
    horizonYears: BUY_TERMS.horizonYears,
  };
  const cases: BuyCase[] = [
    base,
    { ...base, sharing: "family" },
    { ...base, sharing: "site" },
    { ...base, slipYears: 1, horizonYears: base.horizonYears + 1 },
    { ...base, repaired: false },
  ];
  return cases.map((asked) => ({ asked, label: labelOf(asked), buy: noticeBuy(parts, rates, asked) }));
}

function labelOf({ sharing, repaired, slipYears }: BuyCase): string {
  const more = [repaired ? "" : "repair stops", slipYears > 0 ? "every retrofit a year late" : ""];
  return [SHARING[sharing], ...more.filter((text) => text !== "")].join(", ");
}

/** EUR of a buy at the parts' own prices; null when a price is missing or the parts are not told apart. */
export function priceOfBuy({ groups }: NoticeBuy, parts: LastBuyInput["parts"]): number | null {
  const prices = new Map(parts.map(({ id, price }) => [id, price]));
  const all = groups.map(({ partIds, quantity }) => {
    const [only, ...more] = partIds;
    const price = only === undefined || more.length > 0 ? null : (prices.get(only) ?? null);
    return quantity === 0 ? 0 : price === null ? null : quantity * price;
  });
  return all.every((one) => one !== null) ? sum(all.map((one) => one ?? 0)) : null;
}
