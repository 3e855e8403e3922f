import type { IsoDate } from "@/lib/kernel/isoDate";
import type { Amount } from "@/lib/kernel/money";
import type { Overrun } from "@/lib/projects/overrun";
import { controlOf, type ProjectFigures, type ProjectStatus } from "@/lib/view/project";

/** What the database adds up of a project, from which its figures follow. */
export interface SummedProject {
  /** With the changes approved by the day. */
  readonly budget: Amount;
  readonly paid: Amount;
  readonly contingencyLeft: Amount | null;
  /** Weight of all milestones, of those due by the day and of what is earned. */
  readonly weight: number;
  readonly planned: number;
  readonly earned: number;
}

/** The figures of a project in a list. */
export interface ListedFigures {
  /** Shares of the whole; null without milestones. */
  readonly plannedShare: number | null;
  readonly earnedShare: number | null;
  readonly cpi: number | null;
  readonly spi: number | null;
  readonly trend: number | null;
  readonly eacSpan: ProjectFigures["eacSpan"];
  readonly overrun: Overrun["state"] | null;
}

/** A project in the list; amounts in its own currency. */
export interface ListedProject extends SummedProject, ListedFigures {
  readonly id: string;
  readonly code: string;
  readonly name: string;
  readonly status: ProjectStatus;
  readonly siteCode: string;
  readonly lineCode: string;
  readonly currency: string;
  /** Units of the currency for one EUR, budget rate; null is not known. */
  readonly perEuro: number | null;
  readonly cause: string | null;
  readonly startsOn: IsoDate | null;
  readonly endsOn: IsoDate | null;
  /** What the lead expects it to cost in the end; null is not stated. */
  readonly forecast: Amount | null;
  /** Ordered and not yet paid. */
  readonly open: Amount;
  /** Milestones overdue. */
  readonly overdue: number;
  /** The first gate not passed, its open items and the day of the task it guards; null is none. */
  readonly gate: string | null;
  readonly gateOpen: number | null;
  readonly gateOn: IsoDate | null;
}

/** The figures of a project from its sums; the same as those of its page. */
export function listedFigures(sums: SummedProject): ListedFigures {
  const share = (part: number) => (sums.weight > 0 ? Math.min(1, part / sums.weight) : null);
  const [planned, earned] = [share(sums.planned), share(sums.earned)];
  const { budget, paid, contingencyLeft } = sums;
  const { control, eacSpan, overrun } = controlOf(
    { planned, earned },
    { total: { budget, paid }, contingencyLeft },
  );
  return {
    ...{ plannedShare: planned, earnedShare: earned, eacSpan },
    ...{ cpi: control?.cpi ?? null, spi: control?.spi ?? null, trend: control?.eac.trend ?? null },
    overrun: overrun?.state ?? null,
  };
}

const OVERRUN_WORDS = {
  early: "too early to tell",
  kept: "none seen",
  contingency: "needs contingency",
  budget: "passes the budget",
} satisfies Record<Overrun["state"], string>;

/** What the lowest forecast says of the budget, in words; null is without milestones. */
export function overrunWords(state: Overrun["state"] | null): string {
  return state === null ? "not known" : OVERRUN_WORDS[state];
}

/** Whether something is overdue, as the list is chosen by. */
export function lateWords(overdue: number): string {
  return overdue > 0 ? "late" : "not late";
}
