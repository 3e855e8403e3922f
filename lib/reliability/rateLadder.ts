import { borrow, borrowAndCount, type Counted } from "@/lib/reliability/borrow";
import { type GammaRate, posterior, rateInterval } from "@/lib/reliability/rate";

/** What is believed of a rate at one level, and from what. */
export interface RateLevel {
  /** Mean of what it borrows from the wider level, and its weight in unit-years; null at the widest. */
  readonly borrowed: { readonly mean: number; readonly unitYears: number } | null;
  /** What the level counted itself; null where nothing is counted. */
  readonly counted: Counted | null;
  readonly mean: number;
  /** 5 % and 95 % points. */
  readonly low: number;
  readonly high: number;
}

/** Counts from the widest to the narrowest level. */
export interface LadderCounts {
  /** All parts of the family; null when the part has none. */
  readonly family: Counted | null;
  /** All sites. */
  readonly part: Counted;
  readonly sites: readonly Counted[];
}

export interface RateLadder {
  readonly itemClass: RateLevel;
  /** Null when the part has no family. */
  readonly family: RateLevel | null;
  readonly part: RateLevel;
  /** In the order given. */
  readonly sites: readonly RateLevel[];
}

const SPAN_LEVEL = 0.9;

function step(belief: GammaRate, from: GammaRate | null, counted: Counted | null): RateLevel {
  const borrowed = from && { mean: from.a / from.b, unitYears: from.b };
  return { ...rateInterval(belief, SPAN_LEVEL), borrowed, counted };
}

/**
 * Opens a rate level by level: class, family, part, site, each borrowing from the one before.
 *
 * Family: class belief at its full weight plus the family's events. Part and site: mean of the wider level at a weight
 * of at most 100 unit-years (`borrow`) plus own events. A part without a family borrows from its class.
 *
 * @param prior Belief of the class, a events and b unit-years, both > 0.
 * @throws {RangeError} naming the argument and its value.
 */
export function rateLadder(prior: GammaRate, counts: LadderCounts): RateLadder {
  const family = counts.family === null ? prior : posterior(prior, counts.family);
  const part = borrowAndCount(family, counts.part);
  return {
    itemClass: step(prior, null, null),
    family: counts.family && step(family, prior, counts.family),
    part: step(part, borrow(family), counts.part),
    sites: counts.sites.map((site) => step(borrowAndCount(part, site), borrow(part), site)),
  };
}
