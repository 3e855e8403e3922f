import type { IsoDate } from "@/lib/kernel/isoDate";
import type { PlanLineInput, PlanOption, PlanProblem, PlanWindow } from "@/lib/portfolio/planProblem";
import type { PlanChoice } from "@/lib/portfolio/planResult";

/** A time in which work can be placed. */
export interface PlanSlot {
  readonly id: string;
  readonly startsOn: IsoDate;
  readonly endsOn: IsoDate;
  /** Place of its quarter in the plan. */
  readonly quarter: number;
  /** Null is a quarter, for work that needs no shutdown. */
  readonly window: PlanWindow | null;
}

/** An option of a line in a slot, as it may be chosen. */
export interface Candidate {
  /** Place among all candidates. */
  readonly index: number;
  readonly line: PlanLineInput;
  readonly option: PlanOption;
  readonly slot: PlanSlot;
}

/** The windows and quarters of a plan; a window that starts outside its quarters is left out. */
export function slotsOf({ quarters, windows }: Pick<PlanProblem, "quarters" | "windows">): PlanSlot[] {
  const quarterOf = (day: IsoDate) =>
    quarters.findIndex(({ startsOn, endsOn }) => startsOn <= day && day <= endsOn);
  return [
    ...quarters.map(({ id, startsOn, endsOn }, quarter) => ({ id, startsOn, endsOn, quarter, window: null })),
    ...windows.map((window) => ({ ...window, quarter: quarterOf(window.startsOn), window })),
  ].filter(({ quarter }) => quarter >= 0);
}

function isFor(slot: PlanSlot, line: PlanLineInput, option: PlanOption): boolean {
  const { window } = slot;
  if (option.windowHours === 0 || window === null) return option.windowHours === 0 && window === null;
  const here = window.siteId === line.siteId && (window.lineId === null || window.lineId === line.lineId);
  return here && window.usableHours !== null;
}

/**
 * Everything that could be chosen, whether it fits the limits or not, in the order of lines, options and slots.
 *
 * Work that stops a line goes into a shutdown of its own or of its site whose hours are known; other work into a quarter.
 */
export function candidatesOf(problem: PlanProblem): Candidate[] {
  const slots = slotsOf(problem);
  return problem.lines
    .flatMap((line) =>
      line.options
        .filter(({ kind }) => kind !== "nothing")
        .flatMap((option) =>
          slots.filter((slot) => isFor(slot, line, option)).map((slot) => ({ line, option, slot })),
        ),
    )
    .map((candidate, index) => ({ index, ...candidate }));
}

/** The candidate as a choice. */
export function choiceOf({ line, option, slot }: Candidate): PlanChoice {
  return { lineId: line.lineId, optionId: option.id, slotId: slot.id };
}

/**
 * The candidates that are chosen, ascending.
 *
 * @throws {RangeError} for a choice that is none of them.
 */
export function chosenOf(candidates: readonly Candidate[], choices: readonly PlanChoice[]): number[] {
  const key = ({ lineId, optionId, slotId }: PlanChoice) => JSON.stringify([lineId, optionId, slotId]);
  const places = new Map(candidates.map((candidate) => [key(choiceOf(candidate)), candidate.index]));
  return choices
    .map((choice) => {
      const place = places.get(key(choice));
      if (place === undefined)
        throw new RangeError(`choices must be an option of a line in a slot for it, got ${key(choice)}`);
      return place;
    })
    .sort((a, b) => a - b);
}
