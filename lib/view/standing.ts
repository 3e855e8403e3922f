import {
  type JudgedController,
  type JudgedLine,
  STANDINGS,
  type Standing,
} from "@/lib/retrofit/compatibility";
import type { VerdictState } from "@/lib/retrofit/compatibility/verdict";
import { firmwareWord } from "@/lib/retrofit/firmwareLevel";

/** A line and how it stands against the rules. */
export interface LineStanding extends JudgedLine {
  readonly code: string;
  readonly name: string;
  readonly siteCode: string;
}

/** What stands of a line in a few words; the same words name the counts. */
export const STANDING_WORDS: Readonly<Record<Standing, string>> = {
  swap: "Controller swap",
  below: "Below the floor",
  unknown: "Not read",
  "no-rule": "No rule",
  ready: "Ready",
  converted: "Has the new drives",
};

export const NO_CONTROLLER = "No controller recorded";

/** Where something stands in words; null has no controller. */
export function standingWord(standing: Standing | null): string {
  return standing === null ? NO_CONTROLLER : STANDING_WORDS[standing];
}

/** One row of the list of lines. */
export interface StandingRow {
  readonly code: string;
  readonly name: string;
  readonly siteCode: string;
  readonly standing: string;
  readonly lead: string | null;
  readonly model: string | null;
  readonly level: string | null;
  /** Memory of the leading controller: its state where a raise is needed, else null. */
  readonly memory: VerdictState | null;
  /** The sum behind it. */
  readonly memorySum: string | null;
  /** Controllers that stand worse than the leading one. */
  readonly worse: number;
  readonly unread: number;
  readonly controllers: number;
  /** Controllers that would not run a drive of the newer hardware; null where no rule concerns the line. */
  readonly revisionBlocked: number | null;
  readonly revisionUnknown: number;
}

/** The rows of the list of lines. */
export function standingRows(lines: readonly LineStanding[]): StandingRow[] {
  return lines.map(({ code, name, siteCode, standing, lead, controllers }) => ({
    ...{ code, name, siteCode },
    standing: standingWord(standing),
    ...leadCells(lead),
    worse:
      lead === null ? 0 : controllers.filter(({ step }) => STEP_ORDER[step] > STEP_ORDER[lead.step]).length,
    unread: controllers.filter(({ facts }) => facts.level.state === "unknown").length,
    controllers: controllers.length,
    ...revisionCells(controllers),
  }));
}

function leadCells(lead: JudgedController | null) {
  const memory = lead && memoryOfRaise(lead);
  return {
    lead: lead?.facts.designation ?? null,
    model: lead?.facts.model ?? null,
    level: lead && firmwareWord(lead.facts.level),
    memory: memory?.state ?? null,
    memorySum: memory?.arithmetic ?? null,
  };
}

function revisionCells(controllers: readonly JudgedController[]) {
  const states = controllers.flatMap((one) => statesOf(one, "hardware_revision"));
  return {
    revisionBlocked: states.length === 0 ? null : states.filter((one) => one === "blocked").length,
    revisionUnknown: states.filter((one) => one === "unknown").length,
  };
}

const STEP_ORDER = { none: 0, "no-rule": 1, raise: 2, unknown: 3, swap: 4 } as const;

function statesOf({ verdicts }: JudgedController, kind: JudgedController["verdicts"][number]["kind"]) {
  return verdicts.filter((one) => one.kind === kind).map(({ state }) => state);
}

/** What memory says of the raise the controller needs; null where none is needed. */
function memoryOfRaise({ step, verdicts }: JudgedController) {
  return step === "raise" ? (verdicts.find(({ kind }) => kind === "memory_growth") ?? null) : null;
}

/** A blocker of a line: at how many controllers it stands, in words, and what clears it. */
export interface BlockerCount {
  readonly blocker: string;
  /** `6 of 7 blocked, 1 of 7 unknown` */
  readonly words: string;
  readonly ways: readonly string[];
}

/** What stands in the way on a line's controllers, by blocker. */
export function blockerCounts(controllers: readonly JudgedController[]): BlockerCount[] {
  const open = controllers.flatMap(({ verdicts }) => verdicts).filter(({ state }) => state !== "clear");
  return [...new Set(open.map(({ blocker }) => blocker))].map((blocker) => {
    const own = open.filter((one) => one.blocker === blocker);
    const at = (state: VerdictState) =>
      controllers.filter(({ verdicts }) =>
        verdicts.some((one) => one.blocker === blocker && one.state === state),
      ).length;
    const states = (["blocked", "unknown", "caution"] as const).filter((state) => at(state) > 0);
    return {
      blocker,
      words: states.map((state) => `${at(state)} of ${controllers.length} ${state}`).join(", "),
      ways: [...new Set(own.flatMap(({ unblocks }) => unblocks ?? []))],
    };
  });
}

/** The picture of the group: lines by where their leading controller stands. */
export interface StandingCounts {
  readonly standings: readonly { readonly word: string; readonly lines: number }[];
  readonly memoryBlocked: number;
  readonly memoryCaution: number;
  readonly revisionBlocked: number;
  /** Lines counted ready on which another controller stands worse. */
  readonly readyWithWorse: number;
}

/** Counts the rows; a standing nobody has is left out. */
export function standingCounts(rows: readonly StandingRow[]): StandingCounts {
  const words = [...STANDINGS.map((one) => STANDING_WORDS[one]), NO_CONTROLLER];
  const lines = (holds: (row: StandingRow) => boolean) => rows.filter(holds).length;
  return {
    standings: words
      .map((word) => ({ word, lines: lines(({ standing }) => standing === word) }))
      .filter((one) => one.lines > 0),
    memoryBlocked: lines(({ memory }) => memory === "blocked"),
    memoryCaution: lines(({ memory }) => memory === "caution"),
    revisionBlocked: lines(({ revisionBlocked }) => (revisionBlocked ?? 0) > 0),
    readyWithWorse: lines(({ standing, worse }) => standing === STANDING_WORDS.ready && worse > 0),
  };
}
