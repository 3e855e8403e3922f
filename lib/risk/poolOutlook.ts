import { supplyStage } from "@/lib/lifecycle/supplyStage";
import type { Assumptions } from "@/lib/risk/assumptions";
import type { GroupInput, PoolInput, PoolResult, RateResult, Span } from "@/lib/risk/evaluation";
import type { GroupRates } from "@/lib/risk/groupRates";
import { type SupplyCase, supplyOutlook } from "@/lib/risk/supplyOutlook";
import { depletionDay } from "@/lib/spares/depletion";
import { unreplenishedExposure } from "@/lib/spares/exposure";
import { noSpareChance } from "@/lib/spares/noSpareChance";
import { stockChance } from "@/lib/spares/stockChance";
import { type UsableCount, usableCount } from "@/lib/spares/usableCount";

const UNIDENTIFIED = "unidentified:";
const MONTHS_PER_YEAR = 12;

interface Shelf {
  readonly cases: readonly SupplyCase[];
  readonly stock: readonly number[];
  readonly removal: RateResult;
}

type Picture = Pick<PoolResult, "noSpareByMonth" | "depletionP50" | "depletionP80">;

export const isUnidentified = (poolId: string): boolean => poolId.startsWith(UNIDENTIFIED);

/** No-spare chance at a time: the mean over the uncertain rate, and at the rate's 5 % and 95 % points. */
function noSpareAt(shelf: Shelf, years: number): Span {
  const { a, b, low, high } = shelf.removal;
  const sum = { mean: 0, low: 0, high: 0 };
  for (const { chance, supply } of shelf.cases) {
    const exposure = unreplenishedExposure(supply, years);
    sum.mean += chance * noSpareChance({ a, b, exposure }, shelf.stock);
    sum.low += chance * noSpareChance({ rate: low, exposure }, shelf.stock);
    sum.high += chance * noSpareChance({ rate: high, exposure }, shelf.stock);
  }
  // With a skewed rate the mean chance can lie a hair outside its points.
  return { mean: sum.mean, low: Math.min(sum.low, sum.mean), high: Math.max(sum.high, sum.mean) };
}

/** Mean over the first months of the grid by the trapezoid rule. */
function meanOver(byMonth: readonly Span[], months: number): Span {
  const mean = (key: keyof Span) => {
    let sum = 0;
    for (let m = 1; m <= months; m += 1)
      sum += ((byMonth[m - 1] as Span)[key] + (byMonth[m] as Span)[key]) / 2;
    return Math.min(1, sum / months);
  };
  return { mean: mean("mean"), low: mean("low"), high: mean("high") };
}

function picture(shelf: Shelf, asOf: string, months: number): Picture {
  const noSpareByMonth = Array.from({ length: months + 1 }, (_, m) => noSpareAt(shelf, m / MONTHS_PER_YEAR));
  const means = noSpareByMonth.map(({ mean }) => mean);
  const at = (years: number) => noSpareAt(shelf, years).mean;
  return {
    noSpareByMonth,
    depletionP50: depletionDay(means, { chance: 0.5, asOf, at }),
    depletionP80: depletionDay(means, { chance: 0.8, asOf, at }),
  };
}

/** Nobody knows the part, so nobody knows its spares: the assumed chance, and any chance as its span. */
function unknownPicture(noSpare: number, months: number): Picture {
  const span = { mean: noSpare, low: 0, high: 1 };
  return {
    noSpareByMonth: Array.from({ length: months + 1 }, () => span),
    depletionP50: null,
    depletionP80: null,
  };
}

function assumedOf(pool: PoolInput, count: UsableCount, assumptions: Assumptions): string[] {
  if (isUnidentified(pool.id))
    return [`Part not identified: chance of no spare taken as ${assumptions.unidentifiedNoSpare}.`];
  const { leadYears, unknownStorageWorks } = assumptions.classes[pool.itemClass];
  const out: string[] = [];
  if (pool.dates.checkedOn === null)
    out.push(`No sourced supply date: taken as orderable with chance ${assumptions.undatedOrderable}.`);
  if (pool.leadYears === null)
    out.push(`Lead time not known: taken as ${Math.round(leadYears * 365.25)} days.`);
  if (count.lotsNotCounted > 0) out.push(`${count.lotsNotCounted} stock lots not counted: taken as none.`);
  if (count.piecesOfUnknownStorage > 0)
    out.push(
      `Last power-up of ${count.piecesOfUnknownStorage} pieces not known: each taken to work with chance ${unknownStorageWorks}.`,
    );
  return out;
}

export interface PoolContext {
  readonly asOf: GroupInput["asOf"];
  readonly units: number;
  readonly rates: GroupRates;
  readonly assumptions: Assumptions;
}

/** Stage, rates, usable spares and the chance of an empty shelf of one pool, the same for every line that shares it. */
export function poolOutlook(pool: PoolInput, { asOf, units, rates, assumptions }: PoolContext): PoolResult {
  const { storage, unknownStorageWorks } = assumptions.classes[pool.itemClass];
  const { unprovenWorks, removedUntestedWorks, months, horizonMonths } = assumptions;
  const count = usableCount(pool.stock, {
    ...{ asOf, bands: storage, unknownWorks: unknownStorageWorks },
    ...{ unprovenWorks, removedUntestedWorks },
  });
  const stage = supplyStage(pool.dates, asOf);
  const removal = rates.removal(pool);
  const cases = supplyOutlook({ pool, stage, units, asOf }, assumptions);
  const seen = isUnidentified(pool.id)
    ? unknownPicture(assumptions.unidentifiedNoSpare, months)
    : picture({ cases, stock: stockChance(count.pieces), removal }, asOf, months);
  return {
    poolId: pool.id,
    stage,
    installed: units,
    removal,
    failure: rates.failure(pool),
    book: isUnidentified(pool.id) ? null : count.book,
    usable: count.usable,
    usableBySite: count.bySite,
    deductions: count.deductions,
    removalsPerYear: units * removal.mean,
    ...seen,
    noSpare: meanOver(seen.noSpareByMonth, horizonMonths),
    assumed: assumedOf(pool, count, assumptions),
  };
}
