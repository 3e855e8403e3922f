import type { Result } from "@/lib/kernel/result";
import { type Cut, cutByBudget, type NoCut, type Pin } from "@/lib/portfolio/cutByBudget";
import type { Span } from "@/lib/risk/evaluation";

/** Units a retrofit of a line would replace, counted from what is installed. */
export interface RetrofitScope {
  readonly machines: number;
  readonly drives: number;
  /** Drives among them that nobody has identified or whose supply is undated; taken as to be replaced. */
  readonly undatedDrives: number;
  readonly motors: number;
  readonly controllers: number;
  readonly hmis: number;
  /** Mean price of the recorded successors of the drives, EUR; null is none recorded. */
  readonly drivePrice: number | null;
}

/** What a retrofit is estimated to cost, EUR; ends of common practice. */
export interface CostEstimate extends Span {
  readonly typical: number;
}

/** A ranked line that a budget may reach. */
export interface Candidate {
  readonly id: string;
  readonly code: string;
  readonly name: string;
  readonly siteCode: string;
  /** Places among all lines of the group; null when the cost per hour is not known. */
  readonly rankByLoss: number | null;
  readonly rankByScore: number;
  readonly score: number;
  /** First-year stop loss, EUR; null is not known. */
  readonly stopLoss: Span | null;
  readonly scope: RetrofitScope;
  /** Null when nothing on the line is out of open supply. */
  readonly estimate: CostEstimate | null;
  /** Code of a project that runs on the line already. */
  readonly project: string | null;
}

export interface Candidates {
  readonly asOf: string;
  readonly engine: string;
  readonly dataVersion: number;
  /** Lines of the whole group, seen or not. */
  readonly groupLines: number;
  readonly lines: readonly Candidate[];
}

/** What a planner decided before the cut. */
export interface PlanChoice {
  /** EUR; null is not typed yet. */
  readonly budget: number | null;
  readonly by: "loss" | "score";
  /** Go on past a line that does not fit. */
  readonly fill: boolean;
  /** Codes of lines taken by hand, or left out by hand. */
  readonly pinnedIn: readonly string[];
  readonly pinnedOut: readonly string[];
  /** Costs typed instead of the estimate, EUR by line code. */
  readonly costs: Readonly<Record<string, number>>;
}

export interface CutRow {
  readonly line: Candidate;
  readonly place: number | null;
  readonly cost: number | null;
  readonly typed: boolean;
  readonly pin: Pin;
  readonly funded: boolean;
  /** Budget that reaches the line in this order, pinned lines paid first, EUR; null when not priced or left out. */
  readonly cumulative: number | null;
  /** The funding line is drawn above this row. */
  readonly firstBelow: boolean;
}

/** What one pin changes against the same cut without it. */
export interface PinEffect {
  readonly code: string;
  readonly pin: "in" | "out";
  /** Change of the summed first-year stop loss of the funded lines, EUR. */
  readonly loss: number;
  /** Change of the money spent, EUR. */
  readonly spent: number;
  readonly comesIn: readonly string[];
  readonly fallsOut: readonly string[];
}

export interface PlanCut {
  readonly rows: readonly CutRow[];
  /** Null before a budget is typed. */
  readonly outcome: Result<Cut, NoCut> | null;
  readonly effects: readonly PinEffect[];
  /** Sum over funded lines, EUR; null when no funded line has a known loss. */
  readonly fundedLoss: number | null;
  /** Funded lines without a known stop loss. */
  readonly unknownLoss: number;
}

/** Cuts the ranked lines by the budget, with the pins and typed costs, and says what each pin changes. */
export function planCut(candidates: readonly Candidate[], choice: PlanChoice): PlanCut {
  const ordered = inOrder(candidates, choice.by);
  const outcome = cutWith(ordered, choice);
  const funded = new Set(outcome?.ok ? outcome.value.funded : []);
  const known = ordered.filter(({ id, stopLoss }) => funded.has(id) && stopLoss !== null);
  return {
    rows: rowsOf(ordered, choice, outcome?.ok ? outcome.value : null),
    outcome,
    effects: outcome?.ok ? effectsOf(ordered, choice, outcome.value) : [],
    fundedLoss: known.length === 0 ? null : lossOf(known),
    unknownLoss: funded.size - known.length,
  };
}

function inOrder(lines: readonly Candidate[], by: PlanChoice["by"]): Candidate[] {
  const place = (line: Candidate) => placeOf(line, by) ?? Number.MAX_SAFE_INTEGER;
  return [...lines].sort((a, b) => place(a) - place(b) || (a.code < b.code ? -1 : 1));
}

function placeOf(line: Candidate, by: PlanChoice["by"]): number | null {
  return by === "loss" ? line.rankByLoss : line.rankByScore;
}

function pinOf({ code }: Candidate, { pinnedIn, pinnedOut }: PlanChoice): Pin {
  if (pinnedIn.includes(code)) return "in";
  return pinnedOut.includes(code) ? "out" : "none";
}

function costOf({ code, estimate }: Candidate, { costs }: PlanChoice): number | null {
  return costs[code] ?? estimate?.mean ?? null;
}

function cutWith(ordered: readonly Candidate[], choice: PlanChoice): Result<Cut, NoCut> | null {
  const { budget, fill } = choice;
  if (budget === null) return null;
  const lines = ordered.map((line) => ({
    id: line.id,
    cost: costOf(line, choice),
    pin: pinOf(line, choice),
  }));
  return cutByBudget(lines, { budget, fill });
}

function rowsOf(ordered: readonly Candidate[], choice: PlanChoice, cut: Cut | null): CutRow[] {
  const pinned = ordered.filter((line) => pinOf(line, choice) === "in");
  let reached = pinned.reduce((sum, line) => sum + (costOf(line, choice) ?? 0), 0);
  return ordered.map((line) => {
    const cost = costOf(line, choice);
    const pin = pinOf(line, choice);
    if (pin === "none") reached += cost ?? 0;
    return {
      line,
      place: placeOf(line, choice.by),
      cost,
      typed: choice.costs[line.code] !== undefined,
      pin,
      funded: cut?.funded.includes(line.id) ?? false,
      cumulative: pin === "none" && cost !== null ? reached : null,
      firstBelow: cut?.fundingLine === line.id,
    };
  });
}

const lossOf = (lines: readonly Candidate[]) =>
  lines.reduce((sum, { stopLoss }) => sum + (stopLoss?.mean ?? 0), 0);

function effectsOf(ordered: readonly Candidate[], choice: PlanChoice, cut: Cut): PinEffect[] {
  const fundedBy = (ids: readonly string[]) => ordered.filter(({ id }) => ids.includes(id));
  const now = fundedBy(cut.funded);
  return ordered.flatMap((line): PinEffect[] => {
    const pin = pinOf(line, choice);
    if (pin === "none") return [];
    const without = cutWith(ordered, {
      ...choice,
      pinnedIn: choice.pinnedIn.filter((code) => code !== line.code),
      pinnedOut: choice.pinnedOut.filter((code) => code !== line.code),
    });
    if (!without?.ok) return [];
    const before = fundedBy(without.value.funded);
    return [
      {
        ...{
          code: line.code,
          pin,
          loss: lossOf(now) - lossOf(before),
          spent: cut.spent - without.value.spent,
        },
        comesIn: now.filter((one) => !before.includes(one)).map(({ code }) => code),
        fallsOut: before.filter((one) => !now.includes(one)).map(({ code }) => code),
      },
    ];
  });
}
