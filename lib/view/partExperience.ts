import type { IsoDate } from "@/lib/kernel/isoDate";
import { mtbfBounds } from "@/lib/reliability/mtbf";
import { type RateLadder, type RateLevel, rateLadder } from "@/lib/reliability/rateLadder";
import type { RateTrend } from "@/lib/reliability/rateTrend";
import type { Assumptions } from "@/lib/risk/assumptions";
import type { ItemClass } from "@/lib/risk/evaluation";
import { classPrior } from "@/lib/risk/groupRates";
import { plainNumber, significant } from "@/lib/view/number";
import type { PartEvent } from "@/lib/view/partEvent";

/** Removals draw on the spares, failures stop lines; the two are never mixed. */
export type Kind = "removals" | "failures";

/** What a group counted in the window. */
export interface Counts {
  readonly removals: number;
  readonly failures: number;
  readonly unitYears: number;
}

export interface SiteCounts extends Counts {
  readonly code: string;
  readonly name: string;
}

export interface PartCounts extends Counts {
  readonly id: string;
  readonly number: string;
}

export interface KindTrend extends RateTrend {
  /** Events before any unit was in service; they are in no trend. */
  readonly before: number;
}

/** What five years of records tell of one part. */
export interface PartExperience {
  /** First day of the window. */
  readonly since: IsoDate;
  readonly assumptions: Assumptions;
  /** At the reader's sites, newest first. */
  readonly events: readonly PartEvent[];
  /** Sites the reader may see that held the part or counted an event of it. */
  readonly sites: readonly SiteCounts[];
  /** All other sites in one sum; null when there is none. */
  readonly elsewhere: Counts | null;
  /** Every part of the family at all sites, this one among them; null without a family. */
  readonly family: readonly PartCounts[] | null;
  /** Of the whole pool, all sites. */
  readonly trends: Readonly<Record<Kind, KindTrend>>;
}

const NONE: Counts = { removals: 0, failures: 0, unitYears: 0 };

/** Everything some groups counted together. */
export function together(groups: readonly Counts[]): Counts {
  return groups.reduce(
    (sum, { removals, failures, unitYears }) => ({
      removals: sum.removals + removals,
      failures: sum.failures + failures,
      unitYears: sum.unitYears + unitYears,
    }),
    NONE,
  );
}

const counted = (counts: Counts, kind: Kind) => ({ events: counts[kind], unitYears: counts.unitYears });

/** The part's rate opened by level, as the evaluation builds it; sites in the order of the experience. */
export function ladderOf(experience: PartExperience, itemClass: ItemClass, kind: Kind): RateLadder {
  const { assumptions, sites, elsewhere, family } = experience;
  const part = together(elsewhere === null ? sites : [...sites, elsewhere]);
  return rateLadder(classPrior({ itemClass }, kind, assumptions), {
    family: family && counted(together(family), kind),
    part: counted(part, kind),
    sites: sites.map((site) => counted(site, kind)),
  });
}

/** One level of the ladder, ready to show. */
export interface LadderRow extends Pick<RateLevel, "mean" | "low" | "high"> {
  readonly level: string;
  readonly counted: string;
  readonly borrowed: string;
}

interface Named {
  readonly itemClass: string;
  readonly family: string | null;
  readonly part: string;
  readonly sites: readonly string[];
}

/** The levels from the widest to the narrowest, with what each counted and borrowed. */
export function ladderRows(ladder: RateLadder, names: Named): LadderRow[] {
  const levels: [string, RateLevel | null | undefined][] = [
    [`Class: ${names.itemClass}`, ladder.itemClass],
    [`Family: ${names.family}`, ladder.family],
    [`Part: ${names.part}, all sites`, ladder.part],
    ["Own records alone", recordsAlone(ladder.part.counted)],
    ...names.sites.map((site, i): [string, RateLevel | undefined] => [`Site: ${site}`, ladder.sites[i]]),
  ];
  return levels.flatMap(([level, step]) => (step ? [{ level, ...shown(step) }] : []));
}

/** What the part's own records say when nothing is believed before them; null without time in service. */
function recordsAlone(counted: RateLevel["counted"]): RateLevel | null {
  if (counted === null || counted.unitYears === 0) return null;
  const { unitYears: time, events: failures } = counted;
  const { lower, upper } = mtbfBounds({ time, failures, confidence: 0.9, sides: 2 });
  return {
    borrowed: null,
    counted,
    mean: failures / time,
    low: upper === null ? 0 : 1 / upper,
    high: 1 / lower,
  };
}

function shown({ mean, low, high, counted: own, borrowed }: RateLevel): Omit<LadderRow, "level"> {
  return {
    ...{ mean, low, high },
    counted:
      own === null
        ? "stated, not counted"
        : `${plainNumber(own.events)} in ${plainNumber(own.unitYears)} unit-years`,
    borrowed:
      borrowed === null
        ? "nothing"
        : `${significant(borrowed.mean, 3)} at ${plainNumber(borrowed.unitYears)} unit-years${ofBelief(own, borrowed)}`,
  };
}

/** How much of the belief is borrowed, in words: the weight of what is borrowed beside that of the own records. */
function ofBelief(own: RateLevel["counted"], { unitYears }: NonNullable<RateLevel["borrowed"]>): string {
  const all = unitYears + (own?.unitYears ?? 0);
  return `, ${plainNumber((100 * unitYears) / all)} % of the weight`;
}
