import { type GammaRate, posterior } from "@/lib/reliability/rate";

/** Most unit-years of another group's experience a rate may borrow: own data must be able to win. */
export const MOST_BORROWED_UNIT_YEARS = 100;

/**
 * Makes the belief of a wider group (class, family, part) a prior for one inside it (family, part, site).
 *
 * Same mean, weight cut to at most `most` unit-years: a = mean * weight, b = weight.
 *
 * @see NUREG/CR-6823 on pooling with a limited weight (idea from memory; the cap of 100 is common practice, no source).
 */
export function borrow(wider: GammaRate, most: number = MOST_BORROWED_UNIT_YEARS): GammaRate {
  const weight = Math.min(wider.b, most);
  return { a: (wider.a / wider.b) * weight, b: weight };
}

/** What one group counted. */
export interface Counted {
  readonly events: number;
  readonly unitYears: number;
}

/** The rate of a group from its own count and what it borrows from the wider one. */
export function borrowAndCount(wider: GammaRate, own: Counted): GammaRate {
  return posterior(borrow(wider), own);
}
