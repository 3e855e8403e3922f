import type { Pin } from "@/lib/portfolio/cutByBudget";

export type PlanStatus = "draft" | "put_forward" | "funded" | "declined";

/** Figures over all lines of a plan; only somebody who may see all of its lines gets them. */
export interface PlanTotals {
  /** EUR. */
  readonly budget: number;
  readonly lines: number;
  readonly funded: number;
  readonly spent: number;
  /** Sum of the first-year stop loss of the funded lines, EUR. */
  readonly fundedLoss: number;
}

export interface PlanSummary {
  readonly id: string;
  readonly name: string;
  readonly year: number;
  readonly status: PlanStatus;
  /** A ranking cut by one year's budget, or ways placed in windows over years. */
  readonly kind: "cut" | "board";
  readonly asOf: string;
  readonly rankedBy: "loss" | "score";
  readonly createdBy: string;
  readonly createdOn: string;
  /** Lines of the plan the person may see, and how many of those are funded. */
  readonly ownLines: number;
  readonly ownFunded: number;
  /** Null when the plan has lines the person may not see. */
  readonly totals: PlanTotals | null;
}

export interface PlanRow {
  readonly id: string;
  readonly code: string;
  readonly name: string;
  readonly siteId: string;
  readonly rank: number;
  /** EUR. */
  readonly cost: number;
  readonly stopLoss: number;
  readonly score: number;
  readonly funded: boolean;
  readonly pin: Pin;
  readonly project: string | null;
}

export interface PlanPage extends PlanSummary {
  readonly version: number;
  readonly engine: string;
  readonly dataVersion: number;
  readonly rows: readonly PlanRow[];
}

const STATUS_WORDS = {
  draft: "Draft",
  put_forward: "Put forward",
  funded: "Funded",
  declined: "Declined",
} satisfies Record<PlanStatus, string>;

/** The state of a plan in words. */
export function planStatusWords(status: PlanStatus): string {
  return STATUS_WORDS[status];
}

/** Why the sum of stop losses is not what a plan is worth; stands beside every such sum. */
export const notTheWorth =
  "This sum is not what the plan is worth. A retrofit also sets parts free that protect other lines, so the plan may " +
  "remove more than these lines lose; and a stop loss that falls in the year of the work itself is not removed at all.";
