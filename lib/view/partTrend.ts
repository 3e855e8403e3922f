import { daysBetween, type IsoDate } from "@/lib/kernel/isoDate";
import { LEAST_TREND_EVENTS } from "@/lib/reliability/rateTrend";
import { count, plainNumber, significant } from "@/lib/view/number";
import type { CountedEvent } from "@/lib/view/partEvent";
import type { Kind, KindTrend } from "@/lib/view/partExperience";
import { pText } from "@/lib/view/pooling";

/** A trend in words: what the tests say, and on how much. */
export function trendWords({ verdict, events, unitYears }: KindTrend, kind: Kind): string {
  const basis = `${plainNumber(events)} in ${plainNumber(unitYears)} unit-years`;
  if (verdict === "too-few")
    return `Too few ${kind} to tell: ${basis}, and it takes ${LEAST_TREND_EVENTS} at different times.`;
  return SENTENCES[verdict](kind, basis);
}

const hint = (kind: Kind, basis: string, how: string) =>
  `A hint, no more: by the power law, not by the Laplace test, the ${kind} come ${how} (${basis}).`;

const SENTENCES: Readonly<
  Record<Exclude<KindTrend["verdict"], "too-few">, (kind: Kind, basis: string) => string>
> = {
  "no-sign": (_, basis) => `No sign of change in ${basis}.`,
  faster: (kind, basis) => `The ${kind} come faster (${basis}): the mean of five years is too low for today.`,
  slower: (kind, basis) =>
    `The ${kind} come more slowly (${basis}): the mean of five years is too high for today.`,
  "hint-faster": (kind, basis) => hint(kind, basis, "faster"),
  "hint-slower": (kind, basis) => hint(kind, basis, "more slowly"),
};

/** The figures of the tests: `u 0.31, p = 0.76`; null with too few events. */
export function trendFigures({ tests }: KindTrend): {
  readonly laplace: string;
  readonly power: string;
} | null {
  if (tests === null) return null;
  const { laplace, power } = tests;
  const u = laplace.u.toFixed(2).replace("-", "−");
  return {
    laplace: `u ${u}, ${pText(laplace.p)}`,
    power: `β ${significant(power.beta, 2)}, ${pText(power.p)}`,
  };
}

/** One mark on the line of time: an event, or all events of one cause at one site. */
export interface TimeMark {
  readonly id: string;
  /** Share of the window that has passed, in [0, 1]. */
  readonly at: number;
  readonly failure: boolean;
  /** Events it stands for. */
  readonly events: number;
  readonly words: string;
}

/** What counts, as marks over the window, oldest first; a burst is one mark. */
export function timeMarks(
  events: readonly CountedEvent[],
  window: { readonly from: IsoDate; readonly until: IsoDate },
  write: (date: IsoDate) => string,
): TimeMark[] {
  const days = Math.max(1, daysBetween(window.from, window.until));
  return events
    .filter(({ countsAs }) => countsAs === "failure" || countsAs === "no fault found")
    .map((event) => {
      const { id, day, siteCode, commonCause, countsAs } = event;
      const burst = commonCause === null ? [event] : events.filter((one) => sameCause(one, event));
      const what = countsAs === "failure" ? "failure" : "removal, no fault found";
      const many = burst.length === 1 ? "" : `, ${count(burst.length, "event")} of one cause: ${commonCause}`;
      return {
        ...{ id, failure: countsAs === "failure", events: burst.length },
        at: Math.min(1, Math.max(0, daysBetween(window.from, day) / days)),
        words: `${write(day)}, ${siteCode}: ${what}${many}`,
      };
    })
    .reverse();
}

function sameCause(a: CountedEvent, b: CountedEvent): boolean {
  return a.commonCause === b.commonCause && a.siteCode === b.siteCode && a.setAside === null;
}
