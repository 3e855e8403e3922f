import { type IsoDate, yearsBetween } from "@/lib/kernel/isoDate";
import { supplyStage } from "@/lib/lifecycle/supplyStage";
import type { Assumptions } from "@/lib/risk/assumptions";
import type {
  GroupInput,
  LeavingInput,
  PoolInput,
  PoolResult,
  RateResult,
  Span,
} from "@/lib/risk/evaluation";
import type { GroupRates } from "@/lib/risk/groupRates";
import {
  assumedAhead,
  expectedBy,
  type PiecesAhead,
  piecesAhead,
  shelfAdditions,
} from "@/lib/risk/shelfAdditions";
import { storageRules } from "@/lib/risk/storageRules";
import { type SupplyCase, supplyOutlook } from "@/lib/risk/supplyOutlook";
import { depletionDay } from "@/lib/spares/depletion";
import { noSpareAhead, type PieceChances, type ShelfAddition } from "@/lib/spares/shelfAhead";
import { stockChance } from "@/lib/spares/stockChance";
import { type UsableCount, usableCount } from "@/lib/spares/usableCount";

const UNIDENTIFIED = "unidentified:";
const MONTHS_PER_YEAR = 12;

interface Shelf {
  readonly cases: readonly SupplyCase[];
  readonly stock: PieceChances;
  readonly additions: readonly ShelfAddition[];
  readonly removal: RateResult;
}

type Picture = Pick<PoolResult, "noSpareByMonth" | "depletionP50" | "depletionP80">;

export const isUnidentified = (poolId: string): boolean => poolId.startsWith(UNIDENTIFIED);

/** No-spare chance at a time: the mean over the uncertain rate, and at the rate's 5 % and 95 % points. */
function noSpareSpans({ cases, removal, ...shelf }: Shelf): Record<keyof Span, (years: number) => number> {
  const { a, b, low, high } = removal;
  const over = (rate: { readonly a: number; readonly b: number } | { readonly rate: number }) => {
    const ways = cases.map(({ chance, supply }) => ({
      chance,
      at: noSpareAhead({ ...shelf, supply }, rate),
    }));
    return (years: number) => ways.reduce((sum, { chance, at }) => sum + chance * at(years), 0);
  };
  return { mean: over({ a, b }), low: over({ rate: low }), high: over({ rate: high }) };
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
  const spans = noSpareSpans(shelf);
  const noSpareByMonth = Array.from({ length: months + 1 }, (_, m): Span => {
    const years = m / MONTHS_PER_YEAR;
    const mean = spans.mean(years);
    // With a skewed rate the mean chance can lie a hair outside its points.
    return { mean, low: Math.min(mean, spans.low(years)), high: Math.max(mean, spans.high(years)) };
  });
  const means = noSpareByMonth.map(({ mean }) => mean);
  const at = spans.mean;
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

interface Context {
  readonly asOf: IsoDate;
  readonly leaving: readonly LeavingInput[];
  readonly assumptions: Assumptions;
}

function assumedOf(pool: PoolInput, count: UsableCount, context: Context): string[] {
  const { assumptions } = context;
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
  return [...out, ...assumedAhead(pool, context, assumptions)];
}

export interface PoolContext {
  readonly asOf: GroupInput["asOf"];
  readonly units: number;
  /** What leaves at retrofits, by pool (`leavingByPool`). */
  readonly leaving: ReadonlyMap<string, readonly LeavingInput[]>;
  readonly rates: GroupRates;
  readonly assumptions: Assumptions;
}

/** What leaves, and what is expected to reach the shelf, within so many years. */
function withinHorizon(
  { asOf, leaving }: Pick<Context, "asOf" | "leaving">,
  ahead: readonly PiecesAhead[],
  years: number,
): Pick<PoolResult, "leaving" | "arrivals" | "released"> {
  const gone = leaving.filter(({ on }) => yearsBetween(asOf, on) <= years);
  return {
    leaving: gone.reduce((sum, { units }) => sum + units, 0),
    arrivals: expectedBy(years, "repair", ahead),
    released: expectedBy(years, "retrofit", ahead),
  };
}

/** Stage, rates, usable spares and the chance of an empty shelf of one pool, the same for every line that shares it. */
export function poolOutlook(pool: PoolInput, context: PoolContext): PoolResult {
  const { asOf, units, rates, assumptions } = context;
  const { months, horizonMonths } = assumptions;
  const count = usableCount(pool.stock, storageRules(pool.itemClass, asOf, assumptions));
  const stage = supplyStage(pool.dates, asOf);
  const removal = rates.removal(pool);
  const leaving = context.leaving.get(pool.id) ?? [];
  const cases = supplyOutlook({ pool, stage, units, leaving, asOf }, assumptions);
  const ahead = piecesAhead(pool, { asOf, leaving }, assumptions);
  const seen = isUnidentified(pool.id)
    ? unknownPicture(assumptions.unidentifiedNoSpare, months)
    : picture(
        { cases, stock: stockChance(count.pieces), additions: shelfAdditions(ahead), removal },
        asOf,
        months,
      );
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
    ...withinHorizon({ asOf, leaving }, ahead, horizonMonths / MONTHS_PER_YEAR),
    ...seen,
    noSpare: meanOver(seen.noSpareByMonth, horizonMonths),
    assumed: assumedOf(pool, count, { asOf, leaving, assumptions }),
  };
}
