import type { JudgedController, JudgedLine, Standing } from "@/lib/retrofit/compatibility";
import type { VerdictState } from "@/lib/retrofit/compatibility/verdict";

/** A rule that says another thing of a controller; null is that it says nothing. */
export interface VerdictChange {
  readonly code: string;
  readonly before: VerdictState | null;
  readonly after: VerdictState | null;
}

export interface ControllerChange {
  readonly designation: string;
  readonly changes: readonly VerdictChange[];
}

/** What differs on a line between two sets of rules. */
export interface LineChange {
  /** Null when the line stands where it stood. */
  readonly standing: { readonly before: Standing | null; readonly after: Standing | null } | null;
  readonly controllers: readonly ControllerChange[];
}

/** Compares a line judged by two sets of rules on the same facts; null when no verdict and no standing differs. */
export function compareJudged(before: JudgedLine, after: JudgedLine): LineChange | null {
  const standing =
    before.standing === after.standing ? null : { before: before.standing, after: after.standing };
  const later = new Map(after.controllers.map((one) => [one.facts.designation, one]));
  const controllers = before.controllers
    .map((one) => ({
      designation: one.facts.designation,
      changes: changesOf(one, later.get(one.facts.designation)),
    }))
    .filter(({ changes }) => changes.length > 0);
  return standing === null && controllers.length === 0 ? null : { standing, controllers };
}

function changesOf(before: JudgedController, after: JudgedController | undefined): VerdictChange[] {
  const [was, is] = [statesByCode(before), statesByCode(after)];
  return [...new Set([...was.keys(), ...is.keys()])]
    .sort()
    .map((code) => ({ code, before: was.get(code) ?? null, after: is.get(code) ?? null }))
    .filter((one) => one.before !== one.after);
}

function statesByCode(judged: JudgedController | undefined): Map<string, VerdictState> {
  return new Map(judged?.verdicts.map(({ code, state }) => [code, state]));
}
