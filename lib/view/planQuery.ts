import type { PlanChoice } from "@/lib/view/planCut";

/** What the address of the cut says, before the day it is computed for. */
export interface PlanQuery extends PlanChoice {
  readonly year: number;
}

export type SearchParams = Readonly<Record<string, string | readonly string[] | undefined>>;

const AMOUNT = /^\d{1,12}(\.\d{1,2})?$/;
const CODE = /^[A-Za-z0-9-]{1,20}$/;
const LARGEST_LIST = 500;

/** Reads the cut from the address; what it cannot mean is left out. */
export function readPlanQuery(params: SearchParams, nextYear: number): PlanQuery {
  const text = (key: string) => {
    const value = params[key];
    return (typeof value === "string" ? value : (value?.[0] ?? "")).trim();
  };
  const pinnedIn = codesOf(text("in"));
  const budget = plainAmount(text("budget"));
  const year = /^20\d{2}$/.test(text("year")) ? Number(text("year")) : nextYear;
  return {
    ...{ year, budget, pinnedIn },
    by: text("by") === "score" ? "score" : "loss",
    fill: text("fill") === "yes",
    pinnedOut: codesOf(text("out")).filter((code) => !pinnedIn.includes(code)),
    costs: costsOf(text("cost")),
  };
}

/** An amount as people type it: `1900000`, `1 900 000`, `1,900,000`; null is none. */
export function plainAmount(text: string): number | null {
  const digits = text.replace(/[\s\u00a0\u202f]/g, "").replace(/,(?=\d{3}(\D|$))/g, "");
  return AMOUNT.test(digits) ? Number(digits) : null;
}

function codesOf(text: string): string[] {
  const codes = text.split(",").filter((code) => CODE.test(code));
  return [...new Set(codes)].slice(0, LARGEST_LIST);
}

function costsOf(text: string): Record<string, number> {
  const pairs = text
    .split(",")
    .slice(0, LARGEST_LIST)
    .map((pair) => pair.split(":"))
    .flatMap(([code = "", amount = ""]) => {
      const cost = plainAmount(amount);
      return CODE.test(code) && cost !== null && cost > 0 ? [[code, cost] as const] : [];
    });
  return Object.fromEntries(pairs);
}

/** Whether the budget in the address was typed but cannot be read. */
export function isUnreadableBudget(params: SearchParams): boolean {
  const typed = params.budget;
  return typeof typed === "string" && typed.trim() !== "" && plainAmount(typed) === null;
}

/** The address of a cut on a day. */
export function planHref(query: PlanQuery, asOf: string): string {
  const costs = Object.entries(query.costs).map(([code, cost]) => `${code}:${cost}`);
  const pairs: readonly (readonly [string, string])[] = [
    ["year", String(query.year)],
    ["budget", query.budget === null ? "" : String(query.budget)],
    ["by", query.by],
    ["fill", query.fill ? "yes" : ""],
    ["in", query.pinnedIn.join(",")],
    ["out", query.pinnedOut.join(",")],
    ["cost", costs.join(",")],
    ["asOf", asOf],
  ];
  const said = pairs.filter(([, value]) => value !== "");
  return `/plans/new?${said.map(([key, value]) => `${key}=${encodeURIComponent(value)}`).join("&")}`;
}

/** The same cut with one line pinned in, pinned out, or freed. */
export function withPin(query: PlanQuery, code: string, pin: "in" | "out" | "none"): PlanQuery {
  const others = (codes: readonly string[]) => codes.filter((one) => one !== code);
  return {
    ...query,
    pinnedIn: pin === "in" ? [...others(query.pinnedIn), code] : others(query.pinnedIn),
    pinnedOut: pin === "out" ? [...others(query.pinnedOut), code] : others(query.pinnedOut),
  };
}

/** The same cut with another cost of one line; null goes back to the estimate. */
export function withCost(query: PlanQuery, code: string, cost: number | null): PlanQuery {
  const { [code]: _, ...costs } = query.costs;
  return { ...query, costs: cost === null ? costs : { ...costs, [code]: cost } };
}
