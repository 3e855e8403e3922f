import { borrow, borrowAndCount, type Counted } from "@/lib/reliability/borrow";
import { type GammaRate, rateInterval } from "@/lib/reliability/rate";
import type { Assumptions } from "@/lib/risk/assumptions";
import type {
  Experience,
  ExperienceInput,
  GroupInput,
  PoolInput,
  RateResult,
  Span,
} from "@/lib/risk/evaluation";

/** Removals drive the demand for spares, failures the stops; the two are never mixed. */
type Kind = "removals" | "failures";

const SPAN_LEVEL = 0.9;
const NOTHING: ExperienceInput = { poolId: "", siteId: "", removals: 0, failures: 0, unitYears: 0 };

export interface GroupRates {
  removal(pool: PoolInput): RateResult;
  failure(pool: PoolInput): RateResult;
  /** What was counted of a pool at one site. */
  seenAt(pool: PoolInput, siteId: string): Experience;
  /** Failure rate of a pool's units at one site. */
  failureAt(pool: PoolInput, siteId: string): Span;
  /** What is believed of that rate. */
  failureBelief(pool: PoolInput, siteId: string): GammaRate;
}

function plus(a: ExperienceInput, b: ExperienceInput): ExperienceInput {
  return {
    ...a,
    removals: a.removals + b.removals,
    failures: a.failures + b.failures,
    unitYears: a.unitYears + b.unitYears,
  };
}

function collect(map: Map<string, ExperienceInput>, key: string, seen: ExperienceInput): void {
  map.set(key, plus(map.get(key) ?? NOTHING, seen));
}

const counted = (seen: ExperienceInput | undefined, kind: Kind): Counted => ({
  events: seen?.[kind] ?? 0,
  unitYears: seen?.unitYears ?? 0,
});

const siteKey = (poolId: string, siteId: string) => JSON.stringify([poolId, siteId]);

/** Experience summed by family, by pool and by pool and site. */
function sums(input: GroupInput) {
  const families = new Map(input.pools.map((pool) => [pool.id, pool.familyId]));
  const byFamily = new Map<string, ExperienceInput>();
  const byPool = new Map<string, ExperienceInput>();
  const bySite = new Map<string, ExperienceInput>();
  for (const seen of input.experience) {
    const familyId = families.get(seen.poolId) ?? null;
    if (familyId !== null) collect(byFamily, familyId, seen);
    collect(byPool, seen.poolId, seen);
    collect(bySite, siteKey(seen.poolId, seen.siteId), seen);
  }
  return { byFamily, byPool, bySite };
}

/** What is believed of the removals or failures of a class before any own record. */
export function classPrior(
  pool: Pick<PoolInput, "itemClass">,
  kind: Kind,
  assumptions: Assumptions,
): GammaRate {
  const { removalRate, rateUnitYears, noFaultFoundShare } = assumptions.classes[pool.itemClass];
  const mean = kind === "removals" ? removalRate : removalRate * (1 - noFaultFoundShare);
  return { a: mean * rateUnitYears, b: rateUnitYears };
}

/**
 * The rates of every pool, each borrowing from the wider group: class, then family, then part, then site.
 *
 * Family: class prior plus all events of the family. Part: the family's mean at a weight of at most 100 unit-years
 * plus its own events. Site: the part's mean at the same weight plus the site's events.
 * A wider group contains the narrower one's events, so these count a little twice; the cap bounds it.
 */
export function groupRates(input: GroupInput, assumptions: Assumptions): GroupRates {
  const { byFamily, byPool, bySite } = sums(input);
  const familyRate = (pool: PoolInput, kind: Kind): GammaRate => {
    const prior = classPrior(pool, kind, assumptions);
    const { events, unitYears } = counted(byFamily.get(pool.familyId ?? ""), kind);
    return { a: prior.a + events, b: prior.b + unitYears };
  };
  const partRate = (pool: PoolInput, kind: Kind): GammaRate =>
    borrowAndCount(familyRate(pool, kind), counted(byPool.get(pool.id), kind));
  const result = (pool: PoolInput, kind: Kind): RateResult => {
    const prior = borrow(familyRate(pool, kind));
    const rate = partRate(pool, kind);
    return {
      ...rateInterval(rate, SPAN_LEVEL),
      ...counted(byPool.get(pool.id), kind),
      ...rate,
      priorMean: prior.a / prior.b,
      priorUnitYears: prior.b,
    };
  };
  const failureBelief = (pool: PoolInput, siteId: string): GammaRate =>
    borrowAndCount(partRate(pool, "failures"), counted(bySite.get(siteKey(pool.id, siteId)), "failures"));
  const memo = new Map<string, Span>();
  return {
    removal: (pool) => result(pool, "removals"),
    failure: (pool) => result(pool, "failures"),
    failureBelief,
    seenAt: (pool, siteId) => {
      const { removals, failures, unitYears } = bySite.get(siteKey(pool.id, siteId)) ?? NOTHING;
      return { removals, failures, unitYears };
    },
    failureAt: (pool, siteId) => {
      const key = siteKey(pool.id, siteId);
      const known = memo.get(key);
      if (known) return known;
      const span = rateInterval(failureBelief(pool, siteId), SPAN_LEVEL);
      memo.set(key, span);
      return span;
    },
  };
}
