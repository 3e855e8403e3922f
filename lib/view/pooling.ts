import { type Homogeneity, homogeneity } from "@/lib/reliability/homogeneity";
import { plainNumber, significant } from "@/lib/view/number";
import type { Counts, Kind, PartExperience } from "@/lib/view/partExperience";

/** A group that is asked whether it shares a rate with the others. */
export interface PooledGroup extends Counts {
  readonly name: string;
  /** Where its own rows are; null is nowhere to open. */
  readonly href: string | null;
}

/** The reader's sites one by one, and all others as one group. */
export function siteGroups({ sites, elsewhere }: PartExperience): PooledGroup[] {
  const named = sites.map(({ code, ...counts }) => ({ ...counts, name: code, href: null }));
  return elsewhere === null ? named : [...named, { ...elsewhere, name: "Other sites together", href: null }];
}

/** The parts of the family, all sites of each; null without a family. */
export function familyGroups({ family }: PartExperience): PooledGroup[] | null {
  return family === null
    ? null
    : family.map(({ id, number, ...counts }) => ({ ...counts, name: number, href: `/parts/${id}#events` }));
}

export interface PooledRow {
  readonly name: string;
  readonly href: string | null;
  readonly events: number;
  readonly unitYears: number;
  /** Events it would have at the rate of all; null when nothing is compared. */
  readonly expected: number | null;
  /** Own events by own time in service; null without time in service. */
  readonly rate: number | null;
}

/** Whether some groups may share one rate, in words and rows. */
export interface Pooling {
  readonly verdict: "alike" | "differ" | "rough" | "nothing";
  readonly words: string;
  readonly test: Homogeneity | null;
  readonly rows: readonly PooledRow[];
}

const LEVEL = 0.05;
/** With fewer expected in a group the chi-square chance is rough (own simulation, see the reliability notes). */
const LEAST_EXPECTED = 0.1;

/** A chance of a test: two digits, tiny ones as a bound. */
export function pText(p: number): string {
  return p < 0.001 ? "p < 0.001" : `p = ${significant(p, 2)}`;
}

/** Asks groups of one sort, e.g. `sites`, whether chance alone explains how their counts differ. */
export function poolingOf(groups: readonly PooledGroup[], kind: Kind, noun: string): Pooling {
  const timed = groups.filter(({ unitYears }) => unitYears > 0);
  const test = homogeneity(timed.map(({ unitYears, ...group }) => ({ events: group[kind], unitYears })));
  const rows = groups.map(({ name, href, unitYears, ...group }): PooledRow => {
    const events = group[kind];
    return {
      ...{ name, href, events, unitYears },
      expected: test && test.rate * unitYears,
      rate: unitYears > 0 ? events / unitYears : null,
    };
  });
  return { ...verdictOf(test, { groups: timed.length, kind, noun }), test, rows };
}

interface Compared {
  readonly groups: number;
  readonly kind: Kind;
  readonly noun: string;
}

function verdictOf(
  test: Homogeneity | null,
  { groups, kind, noun }: Compared,
): Pick<Pooling, "verdict" | "words"> {
  if (test === null) {
    const why = groups < 2 ? `fewer than two ${noun} had it in service` : `no ${kind} were counted`;
    return {
      verdict: "nothing",
      words: `Nothing to compare: ${why}. That is not proof that they are alike.`,
    };
  }
  const many = `${plainNumber(groups)} ${noun}`;
  if (test.leastExpected < LEAST_EXPECTED) {
    const words = `Too few events to tell: one of ${many} would expect only ${significant(test.leastExpected, 1)} (${pText(test.p)}, rough).`;
    return { verdict: "rough", words };
  }
  if (test.p < LEVEL)
    return {
      verdict: "differ",
      words: `${many} differ by more than chance (${pText(test.p)}): read the rate of each for itself.`,
    };
  return { verdict: "alike", words: `${many} show no difference beyond chance (${pText(test.p)}): pooled.` };
}
