import { type IsoDate, yearsBetween } from "@/lib/kernel/isoDate";
import type { GammaRate } from "@/lib/reliability/rate";
import type { Assumptions } from "@/lib/risk/assumptions";
import type { ItemClass, PoolFigures, PoolInput } from "@/lib/risk/evaluation";
import type { AssumptionChoice } from "@/lib/schema/assumptions";
import type { PoolSupply } from "@/lib/spares/exposure";

/** Units of a part on a line. */
export interface InstalledPart {
  readonly partId: string;
  readonly siteId: string;
  readonly lineCode: string;
  readonly units: number;
}

/** EUR a stop costs more without a spare than with one, at one line. */
export interface MissingCost extends InstalledPart {
  readonly more: number;
}

export interface BuyPart {
  readonly id: string;
  readonly number: string;
  /** EUR; null is not known. */
  readonly price: number | null;
  readonly pricedOn: IsoDate | null;
}

/** What the figures were computed on. */
export interface FiguresBasis {
  readonly engine: string;
  readonly dataVersion: number;
  readonly assumptionSet: AssumptionChoice;
}

interface BuyFrame {
  readonly asOf: IsoDate;
  readonly basis: FiguresBasis;
  readonly family: {
    readonly id: string;
    readonly maker: string;
    readonly name: string;
    readonly itemClass: ItemClass;
  };
  readonly parts: readonly BuyPart[];
  /** Codes of the reader's sites by id. */
  readonly sites: Readonly<Record<string, string>>;
  readonly everySite: boolean;
}

export interface LastBuyInput extends BuyFrame {
  readonly pools: readonly PoolInput[];
  readonly results: Readonly<Record<string, PoolFigures>>;
  readonly installed: readonly InstalledPart[];
  readonly leaving: readonly (InstalledPart & { readonly on: IsoDate })[];
  readonly costs: readonly MissingCost[];
  readonly assumptions: Assumptions;
}

/** Units of a part on a line, as they leave: on days that projects plan, and the rest without one. */
export interface LineUnits {
  readonly lineCode: string;
  readonly units: number;
  readonly leaving: readonly { readonly on: IsoDate; readonly units: number }[];
}

/** A part at a site, without what the rest of the group holds. */
export interface PartAtSite {
  readonly partId: string;
  readonly siteId: string;
  readonly lines: readonly LineUnits[];
  readonly usable: number;
  /** EUR more without a spare, mean over the units with a known cost; null is not known. */
  readonly more: number | null;
  readonly supply: Omit<PoolSupply, "installed">;
}

/** Everything a last buy is priced from, at the reader's sites and no further. */
export interface BuyBasis extends BuyFrame {
  readonly needs: readonly PartAtSite[];
  readonly familyRate: GammaRate;
  readonly partRates: Readonly<Record<string, GammaRate>>;
  readonly lastOrderOn: IsoDate | null;
  readonly orderByOn: IsoDate | null;
}

const sum = (values: readonly number[]) => values.reduce((all, value) => all + value, 0);
const keyOf = ({ partId, siteId }: Pick<InstalledPart, "partId" | "siteId">) => `${partId} ${siteId}`;

function grouped<Row extends Pick<InstalledPart, "partId" | "siteId">>(
  rows: readonly Row[],
): Map<string, Row[]> {
  const found = new Map<string, Row[]>();
  for (const row of rows) found.set(keyOf(row), [...(found.get(keyOf(row)) ?? []), row]);
  return found;
}

function meanMore(costs: readonly MissingCost[]): number | null {
  const units = sum(costs.map((cost) => cost.units));
  return units === 0 ? null : sum(costs.map((cost) => cost.units * cost.more)) / units;
}

function lineUnits(row: InstalledPart, leaving: LastBuyInput["leaving"]): LineUnits {
  const { lineCode, units } = row;
  let left = units;
  const own = leaving
    .filter((one) => one.lineCode === lineCode)
    .map(({ on, units: going }) => {
      const counted = Math.min(left, going);
      left -= counted;
      return { on, units: counted };
    });
  return { lineCode, units, leaving: own.filter((one) => one.units > 0) };
}

function supplyOf(input: LastBuyInput, partId: string): PartAtSite["supply"] {
  const pool = input.pools.find(({ id }) => id === partId);
  const dates = pool?.dates;
  const yearsTo = (day: IsoDate | null | undefined) => (day ? yearsBetween(input.asOf, day) : null);
  return {
    leadTime: pool?.leadYears ?? input.assumptions.classes[input.family.itemClass].leadYears,
    lastOrderAt: yearsTo(dates?.lastOrderOn) ?? 0,
    repair: pool?.repair
      ? {
          turnaround: pool.repair.turnaroundYears,
          yield: pool.repair.yield,
          untilAt: yearsTo(dates?.repairUntilOn ?? dates?.lastShipOn),
        }
      : null,
  };
}

/** The family's rate: its mean as the parts borrow it, at the weight of all their unit-years and the class belief. */
function familyRate({ results, assumptions, family }: LastBuyInput): GammaRate {
  const rates = Object.values(results).map(({ removal }) => removal);
  const { rateUnitYears, removalRate } = assumptions.classes[family.itemClass];
  const b = rateUnitYears + sum(rates.map(({ unitYears }) => unitYears));
  return { a: (rates[0]?.priorMean ?? removalRate) * b, b };
}

/** What a last buy is worked out from, by part and site, in a form that may leave for the reader's browser. */
export function buyBasis(input: LastBuyInput): BuyBasis {
  const { asOf, basis, family, parts, sites, everySite } = input;
  const [costs, leaving] = [grouped(input.costs), grouped(input.leaving)];
  const earliest = (pick: (dates: PoolInput["dates"]) => IsoDate | null) =>
    input.pools
      .flatMap(({ dates }) => pick(dates) ?? [])
      .sort()
      .at(0) ?? null;
  return {
    ...{ asOf, basis, family, parts, sites, everySite },
    needs: [...grouped(input.installed)].map(([key, rows]) => {
      const { partId = "", siteId = "" } = rows[0] ?? {};
      return {
        ...{ partId, siteId, lines: rows.map((row) => lineUnits(row, leaving.get(key) ?? [])) },
        usable: input.results[partId]?.usableBySite[siteId]?.usable ?? 0,
        ...{ more: meanMore(costs.get(key) ?? []), supply: supplyOf(input, partId) },
      };
    }),
    familyRate: familyRate(input),
    partRates: Object.fromEntries(
      Object.entries(input.results).map(([id, { removal }]) => [id, { a: removal.a, b: removal.b }]),
    ),
    lastOrderOn: earliest(({ lastOrderOn }) => lastOrderOn),
    orderByOn: earliest(({ orderByOn }) => orderByOn),
  };
}
