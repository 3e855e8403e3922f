import { type AxisCheck, axisChecks } from "@/lib/retrofit/axisChecks";
import { type CheckEntry, type CheckVerdict, emptyEntry, judgeCheck } from "@/lib/retrofit/judgeCheck";

export type AxisEntries = Readonly<Record<string, CheckEntry>>;

export interface JudgedCheck {
  readonly check: AxisCheck;
  readonly entry: CheckEntry;
  readonly verdict: CheckVerdict;
}

export interface JudgedAxis {
  readonly checks: readonly JudgedCheck[];
  /** Passed or not applicable. */
  readonly done: number;
  /** Why the axis cannot be accepted, one sentence a check; empty means it can. */
  readonly hindrances: readonly string[];
}

/** Judges all checks of an axis. An entry of a check that does not exist is left out. */
export function judgeAxis(entries: AxisEntries): JudgedAxis {
  const checks = axisChecks.map((check) => {
    const entry = entries[check.id] ?? emptyEntry;
    return { check, entry, verdict: judgeCheck(check, entry) };
  });
  const open = checks.filter(({ verdict }) => verdict.state === "failed" || verdict.state === "missing");
  return {
    checks,
    done: checks.length - open.length,
    hindrances: open.map(({ check, verdict }) => `${check.title}: ${verdict.reason}`),
  };
}
