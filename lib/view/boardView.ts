import { planDates } from "@/lib/portfolio/planDates";
import { brokenBy, limitRows, weeksTooEarly } from "@/lib/portfolio/planLimits";
import type { PlanDecision, PlanProblem } from "@/lib/portfolio/planProblem";
import type { BrokenLimit, ChoiceDates, LimitName, PlanChoice } from "@/lib/portfolio/planResult";
import { type Candidate, choiceOf, chosenOf, slotsOf } from "@/lib/portfolio/planSlots";
import { byQuarter } from "@/lib/portfolio/planSpend";
import type { PlanEvaluator } from "@/lib/portfolio/planWorth";
import { boardMoney } from "@/lib/view/boardMoney";
import { type LimitNames, limitAmount, limitWords, quarterWords } from "@/lib/view/limitWords";
import { type DutyMark, isNear } from "@/lib/view/obligation";
import type {
  BoardAcceptance,
  BoardLine,
  BoardSlot,
  BoardView,
  BoardWay,
  BrokenWords,
  Placed,
} from "@/lib/view/planBoard";
import type { PlanInputs } from "@/lib/view/planInputs";
import type { GroundLine } from "@/lib/view/planProblem";

/** What is decided about a line of a plan. */
export interface DecidedLine {
  readonly lineId: string;
  readonly rank: number;
  readonly pin: "in" | "out" | "none";
  readonly pinReason: string | null;
  readonly pinnedBy: string | null;
}

export interface BoardTerms {
  readonly evaluator: PlanEvaluator;
  readonly inputs: PlanInputs;
  readonly ground: readonly GroundLine[];
  readonly decided: readonly DecidedLine[];
  readonly acceptances: ReadonlyMap<string, BoardAcceptance>;
  readonly pins: readonly PlanDecision[];
  readonly bans: readonly PlanDecision[];
  readonly choices: readonly PlanChoice[];
  readonly stamp: Pick<BoardView, "engine" | "dataVersion" | "assumptions">;
}

/** The plan's problem with what persons decided; the ground knows only what the freezes ban. */
export function decidedProblem(
  { problem }: PlanEvaluator,
  { pins, bans }: Pick<BoardTerms, "pins" | "bans">,
): PlanProblem {
  return { ...problem, pins, bans: [...problem.bans, ...bans] };
}

/** Choices that are still possible; what a changed line or window no longer offers is left out. */
export function possibleChoices({ candidates }: PlanEvaluator, choices: readonly PlanChoice[]): PlanChoice[] {
  const known = new Set(candidates.map((candidate) => JSON.stringify(choiceOf(candidate))));
  return choices.filter(({ lineId, optionId, slotId }) =>
    known.has(JSON.stringify({ lineId, optionId, slotId })),
  );
}

/** Everything a plan shows: its places, worth, days, money, hands and what it breaks. */
export function boardView(terms: BoardTerms): BoardView {
  const { evaluator, inputs, ground, decided, stamp } = terms;
  const problem = decidedProblem(evaluator, terms);
  const choices = possibleChoices(evaluator, terms.choices);
  const chosen = chosenOf(evaluator.candidates, choices);
  const limits = limitRows(problem, evaluator.candidates);
  const { lines: losses, ...worth } = evaluator.worth(chosen);
  const dates = planDates(evaluator, limits, chosen);
  const names = namesOf(terms);
  const lossOf = new Map(losses.map((loss) => [loss.lineId, loss]));
  const byLine = new Map(ground.map((line) => [line.id, line]));
  const within = new Set(decided.map(({ lineId }) => lineId));
  const reached = new Set(decided.map(({ lineId }) => byLine.get(lineId)?.siteId ?? ""));
  return {
    ...{ asOf: problem.asOf, ...stamp, inputs, worth, choices },
    quarters: problem.quarters.map(({ id, year, startsOn }) => ({ id, year, startsOn })),
    lines: decided.flatMap((line): BoardLine[] => {
      const known = byLine.get(line.lineId);
      if (!known) return [];
      const loss = lossOf.get(line.lineId);
      return [
        lineOf({
          terms,
          line,
          known,
          dates,
          names,
          without: loss?.without ?? null,
          with: loss?.with ?? null,
        }),
      ];
    }),
    unplannable: ground.flatMap(({ id, siteId, code, name, none }) =>
      within.has(id) || !reached.has(siteId)
        ? []
        : [{ code, name, why: none ?? "its stop loss is not known" }],
    ),
    broken: brokenBy(limits, chosen).map((one) => brokenWords(one, names)),
    ...boardMoney({ evaluator, problem, limits, chosen, inputs }),
    ...{ reserveShare: problem.reserveShare, horizonMonths: problem.horizonMonths },
    ...{ discountRate: problem.discountRate, windowFill: problem.windowFill },
  };
}

/** What ids of a plan are called. */
export function namesOf({ evaluator: { problem, candidates }, inputs }: BoardTerms): LimitNames {
  const of = (pairs: readonly (readonly [string, string])[]) => {
    const map = new Map(pairs);
    return (id: string) => map.get(id) ?? id;
  };
  return {
    site: of(inputs.sites.map(({ id, code }) => [id, code])),
    line: of(problem.lines.map(({ lineId, code }) => [lineId, code])),
    option: of(candidates.map(({ option }) => [option.id, option.name])),
    slot: of(slotsOf(problem).map(({ id, window }) => [id, window?.name ?? quarterWords(id)])),
  };
}

/** A broken limit in words. */
export function brokenWords({ limit, unit, used, most, by }: BrokenLimit, names: LimitNames): BrokenWords {
  const counted = unit !== "choices";
  return {
    what: limitWords(limit, names),
    numbers: counted
      ? `${limitAmount(used, unit)} of ${limitAmount(most, unit)}: ${limitAmount(by, unit)} too much`
      : null,
    lineIds: "lineId" in (limit as LimitName) ? [(limit as { readonly lineId: string }).lineId] : [],
  };
}

interface LineTerms {
  readonly terms: BoardTerms;
  readonly line: DecidedLine;
  readonly known: GroundLine;
  readonly dates: readonly ChoiceDates[];
  readonly names: LimitNames;
  readonly without: number | null;
  readonly with: number | null;
}

function lineOf({ terms, line, known, dates, names, ...losses }: LineTerms): BoardLine {
  const { evaluator, inputs, acceptances } = terms;
  const { problem } = evaluator;
  const own = evaluator.candidates.filter((one) => one.line.lineId === line.lineId);
  return {
    ...{
      ...line,
      ...losses,
      code: known.code,
      name: known.name,
      siteId: known.siteId,
      stopLoss: known.stopLoss,
    },
    duties: inputs.duties
      .filter(
        (duty) => duty.lineCode === known.code && isNear({ dueOn: duty.dueOn, doneOn: null }, problem.asOf),
      )
      .map(({ kind, title, dueOn }): DutyMark => ({ kind, title, dueOn })),
    acceptance: acceptances.get(line.lineId) ?? null,
    ways: waysOf(own, problem, names),
    placed: dates
      .filter(({ choice }) => choice.lineId === line.lineId)
      .map((date) => placedOf(date, { own, names, quarters: problem.quarters }))
      .sort((a, b) => a.stage - b.stage),
  };
}

function waysOf(own: readonly Candidate[], problem: PlanProblem, names: LimitNames): BoardWay[] {
  const ways = new Map<string, BoardWay & { slots: BoardSlot[] }>();
  for (const candidate of own) {
    const { option } = candidate;
    const way = ways.get(option.id) ?? {
      ...{ id: option.id, kind: option.kind, name: option.name, stage: option.stage },
      cost: { low: option.cost.low, typical: option.cost.typical, high: option.cost.high },
      ...{
        windowHours: option.windowHours,
        orderWeeks: option.orderWeeks,
        projectWeeks: option.projectWeeks,
      },
      engineerWeeks: option.engineerWeeks.reduce((sum, { weeks }) => sum + weeks, 0),
      crewWeeks: option.crew?.weeks ?? 0,
      released: option.removes.reduce((sum, { units, fate }) => (fate === "kept" ? sum + units : sum), 0),
      after: option.after.map(names.option),
      slots: [],
    };
    way.slots.push(slotOf(candidate, problem, names));
    ways.set(option.id, way);
  }
  for (const way of ways.values()) way.slots.sort((a, b) => (a.startsOn < b.startsOn ? -1 : 1));
  return [...ways.values()];
}

function slotOf(
  candidate: Candidate,
  { quarters, windowFill, asOf }: PlanProblem,
  names: LimitNames,
): BoardSlot {
  const { slot, option } = candidate;
  const room = slot.window ? (slot.window.usableHours ?? 0) * windowFill : option.windowHours;
  return {
    ...{ id: slot.id, name: names.slot(slot.id), startsOn: slot.startsOn, endsOn: slot.endsOn },
    quarterId: quarters[slot.quarter]?.id ?? "",
    shortHours: Math.max(0, option.windowHours - room),
    earlyWeeks: weeksTooEarly(candidate, asOf),
  };
}

interface PlacedTerms {
  readonly own: readonly Candidate[];
  readonly names: LimitNames;
  readonly quarters: PlanProblem["quarters"];
}

function placedOf(
  { choice, startsOn, endsOn, orderBy, startBy, next }: ChoiceDates,
  { own, names, quarters }: PlacedTerms,
): Placed {
  const candidate = own.find(
    ({ option, slot }) => option.id === choice.optionId && slot.id === choice.slotId,
  );
  const option = candidate?.option;
  const cost = option?.cost ?? { low: 0, typical: 0, high: 0 };
  return {
    ...{ optionId: choice.optionId, name: names.option(choice.optionId), stage: option?.stage ?? 1 },
    ...{ slotId: choice.slotId, slotName: names.slot(choice.slotId), startsOn, endsOn, orderBy, startBy },
    quarterId: candidate?.slot.window ? quarterOf(candidate.slot.startsOn) : choice.slotId,
    cost: { low: cost.low, typical: cost.typical, high: cost.high },
    phasing: candidate ? phasingOf(candidate, quarters) : [],
    next: next && { slotName: names.slot(next.slotId), worthLost: next.worthLost },
  };
}

function phasingOf(candidate: Candidate, quarters: PlanProblem["quarters"]): Placed["phasing"] {
  const { typical, phases } = candidate.option.cost;
  return byQuarter(candidate, typical, phases).map(({ quarter, part }) => ({
    quarterId: quarters[quarter]?.id ?? "",
    euros: part,
  }));
}

const quarterOf = (day: string) => `${day.slice(0, 4)}-Q${Math.ceil(Number(day.slice(5, 7)) / 3)}`;
