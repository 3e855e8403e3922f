import type { BudgetChange } from "@/lib/projects/ledger";

const STATES = { asked: "Asked, not decided", approved: "Approved", declined: "Declined" } satisfies Record<
  BudgetChange["state"],
  string
>;
const SOURCES = { contingency: "contingency", new_money: "new money" } satisfies Record<
  BudgetChange["source"],
  string
>;

/** Where a change of the budget stands, in words. */
export const changeStateWords = (state: BudgetChange["state"]): string => STATES[state];

/** Where its money comes from, in words. */
export const changeSourceWords = (source: BudgetChange["source"]): string => SOURCES[source];
