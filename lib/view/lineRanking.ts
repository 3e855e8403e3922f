import type { IsoDate } from "@/lib/kernel/isoDate";
import type { SupplyStage } from "@/lib/lifecycle/supplyStage";
import type { Evidence, Span } from "@/lib/risk/evaluation";
import type { SeenTotals } from "@/lib/view/drawnTotals";
import type { ControllerFacts } from "@/lib/view/lineControllers";
import type { RankedPlace } from "@/lib/view/linePlace";
import type { DutyMark } from "@/lib/view/obligation";

/** More that a stop costs once it lasts longer than so many hours. */
export interface CostStep {
  readonly afterHours: number;
  readonly cost: number;
}

/** What a stop costs on a line, in EUR at the budget rate, and who says so; null is not known. */
export interface LineCost {
  readonly perHour: number | null;
  /** By any stop at all; null is none known. */
  readonly fixed: number | null;
  /** By hours; empty is none known. */
  readonly steps: readonly CostStep[];
  readonly owner: string | null;
  readonly approvedOn: IsoDate | null;
  readonly validUntil: IsoDate | null;
  readonly evidence: Evidence;
}

/** One row of the ranking. */
export interface RankedLine {
  readonly id: string;
  readonly code: string;
  readonly name: string;
  readonly siteCode: string;
  readonly siteName: string;
  /** Place in the whole group, from 1; null without a cost per hour. */
  readonly rankByLoss: number | null;
  readonly rankByScore: number;
  /** How sure the place by loss is; null without a cost per hour. */
  readonly place: RankedPlace | null;
  readonly score: number;
  readonly scoreParts: { readonly stage: number; readonly spares: number; readonly repair: number };
  /** EUR a year; low and high are the 5 % and 95 % points of the draws. */
  readonly stopLoss: Span | null;
  readonly baseLoss: number | null;
  readonly shortageLoss: number | null;
  readonly stopsPerYear: number;
  readonly depletionP80: IsoDate | null;
  /** What runs out then; `id` is null when nobody has read the part. */
  readonly depletionPart: { readonly id: string | null; readonly label: string } | null;
  readonly worstStage: SupplyStage;
  readonly cost: LineCost;
  /** Safety and legal dates of the line within 24 months or overdue, soonest first. */
  readonly duties: readonly DutyMark[];
  readonly controllers: readonly ControllerFacts[];
  /** Assumptions behind the row, in words. */
  readonly assumed: readonly string[];
}

/** What tells whether a cost per hour can be taken as agreed. */
export type AgreedCost = Omit<LineCost, "fixed" | "steps">;

/** The lines a person may see, with their places among all lines of the group. */
export interface RankingOf<L> {
  readonly asOf: IsoDate;
  readonly engine: string;
  readonly dataVersion: number;
  /** Lines of the whole group, seen or not. */
  readonly groupLines: number;
  readonly totals: SeenTotals;
  readonly lines: readonly L[];
}

export type Ranking = RankingOf<RankedLine>;

/** Whether the rows are the whole group, so that their sum is the group's. */
export function isWholeGroup(ranking: RankingOf<unknown>): boolean {
  return ranking.lines.length === ranking.groupLines;
}

/** Whether the approval of a cost ended before a day, so that its owner has to confirm it again. */
export function approvalEnded({ perHour, approvedOn, validUntil }: AgreedCost, asOf: IsoDate): boolean {
  return perHour !== null && approvedOn !== null && validUntil !== null && validUntil < asOf;
}

/** Whether a cost was never agreed, other than one whose approval has run out. */
export function isUnapproved(cost: AgreedCost, asOf: IsoDate): boolean {
  return costDoubt(cost, asOf) !== null && !approvalEnded(cost, asOf);
}

/** Why a cost per hour cannot be taken as agreed on a day; null when it can. */
export function costDoubt(cost: AgreedCost, asOf: IsoDate): string | null {
  if (cost.perHour === null) return "No cost per hour recorded";
  if (cost.owner === null) return "Nobody answers for the figure";
  if (cost.approvedOn === null || cost.approvedOn > asOf) return "Not approved";
  if (approvalEnded(cost, asOf)) return "Approval has run out";
  return cost.evidence === "assumed" ? "Assumed" : null;
}
