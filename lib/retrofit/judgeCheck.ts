import type { IsoDate } from "@/lib/kernel/isoDate";
import type { AxisCheck, PassRule } from "@/lib/retrofit/axisChecks";

/** What was written down for one check; null and empty are not written yet. */
export interface CheckEntry {
  /** Value with the old drive, before removal. */
  readonly asFound: number | null;
  /** Most that is allowed, set before the work. */
  readonly limit: number | null;
  /** Readings with the new drive. */
  readonly asLeft: readonly number[];
  /** For what is not measured: passed or not. */
  readonly confirmed: boolean | null;
  /** Why the check does not apply to this axis; empty applies. */
  readonly notApplicable: string;
  readonly instrument: string;
  readonly by: string;
  /** Second name, of somebody else. */
  readonly witness: string;
  readonly on: IsoDate | null;
}

export const emptyEntry: CheckEntry = {
  asFound: null,
  limit: null,
  asLeft: [],
  confirmed: null,
  notApplicable: "",
  instrument: "",
  by: "",
  witness: "",
  on: null,
};

export interface CheckVerdict {
  readonly state: "passed" | "failed" | "missing" | "not-applicable";
  /** Why, with the numbers compared; for a missing check what is missing. */
  readonly reason: string;
}

const passed = (reason: string): CheckVerdict => ({ state: "passed", reason });
const failed = (reason: string): CheckVerdict => ({ state: "failed", reason });
const missing = (what: string): CheckVerdict => ({ state: "missing", reason: `Missing: ${what}.` });

/** Rounding of sums and products of decimal values must not fail a reading that is at its limit. */
const ROUNDING = 1e-9;
const atMost = (value: number, most: number) => value <= most + ROUNDING * Math.max(1, Math.abs(most));

/** Twelve digits tell all that was typed, without the tail of binary fractions. */
const DIGITS = 12;
const text = (value: number) => String(Number(value.toPrecision(DIGITS)));

/** A difference of values of about that size: its own digits end where theirs do. */
function differenceText(difference: number, size: number): string {
  const whole = size === 0 ? 1 : Math.floor(Math.log10(size)) + 1;
  return text(Number(difference.toFixed(Math.min(100, Math.max(0, DIGITS - whole)))));
}

function compare(ok: boolean, words: string): CheckVerdict {
  return ok ? passed(words) : failed(words);
}

interface Values {
  readonly asFound: number | null;
  readonly limit: number | null;
  readonly asLeft: readonly number[];
}

const NO_BEFORE = missing("the value found before removal");
const NO_LIMIT = missing("the limit");

/** Largest in size: a following error of −0.9 is worse than one of 0.2. */
const worstOf = (values: readonly number[]) => Math.max(...values.map(Math.abs));

function readingsLeft(readings: number, { asLeft }: Values): CheckVerdict | null {
  const left = readings - asLeft.length;
  return left > 0 ? missing(`${left} of ${readings} readings`) : null;
}

function equal({ asFound, asLeft }: Values): CheckVerdict {
  if (asFound === null) return NO_BEFORE;
  const other = asLeft.find((value) => value !== asFound);
  return compare(other === undefined, `${text(other ?? asFound)} against ${text(asFound)}`);
}

function within(share: number, { asFound, limit, asLeft }: Values): CheckVerdict {
  if (asFound === null) return NO_BEFORE;
  const most = limit ?? share * Math.abs(asFound);
  const off = worstOf(asLeft.map((value) => value - asFound));
  const words = `Off ${text(asFound)} by ${differenceText(off, Math.abs(asFound))}, allowed ${text(most)}`;
  return compare(atMost(off, most), words);
}

function repeats(readings: number, values: Values): CheckVerdict {
  const { asFound, limit, asLeft } = values;
  if (limit === null) return NO_LIMIT;
  const range = Math.max(...asLeft) - Math.min(...asLeft);
  const size = worstOf(asLeft);
  const spread = `Spread ${differenceText(range, size)} over ${asLeft.length}, allowed ${text(limit)}`;
  if (!atMost(range, limit)) return failed(spread);
  const left = readingsLeft(readings, values);
  if (left !== null || asFound === null) return left ?? passed(spread);
  const off = Math.abs(asLeft.reduce((sum, value) => sum + value, 0) / asLeft.length - asFound);
  const words = `${spread}; mean off the mark by ${differenceText(off, size)}, allowed ${text(limit)}`;
  return compare(atMost(off, limit), words);
}

function most({ limit, asLeft }: Values): CheckVerdict {
  if (limit === null) return NO_LIMIT;
  const worst = worstOf(asLeft);
  return compare(atMost(worst, limit), `Worst ${text(worst)}, allowed ${text(limit)}`);
}

/** A reading that is too large fails at once; passing takes all of them. */
function notMore(rule: Extract<PassRule, { kind: "notMore" }>, values: Values): CheckVerdict {
  const { asFound, limit } = values;
  if (asFound === null) return NO_BEFORE;
  if (limit === null && rule.needsLimit) return NO_LIMIT;
  const before = rule.share * Math.abs(asFound);
  const verdict = most({ ...values, limit: limit === null ? before : Math.min(before, limit) });
  return verdict.state === "failed" ? verdict : (readingsLeft(rule.readings, values) ?? verdict);
}

function notLess(share: number, { asFound, asLeft }: Values): CheckVerdict {
  if (asFound === null) return NO_BEFORE;
  const least = share * asFound;
  const lowest = Math.min(...asLeft);
  return compare(atMost(least, lowest), `Lowest ${text(lowest)}, at least ${text(least)}`);
}

function measured(rule: Exclude<PassRule, { kind: "confirmed" }>, values: Values): CheckVerdict {
  if (values.asLeft.length === 0) return missing("the value with the new drive");
  switch (rule.kind) {
    case "zero":
      return compare(worstOf(values.asLeft) === 0, `Counted ${text(worstOf(values.asLeft))}, allowed 0`);
    case "equal":
      return equal(values);
    case "within":
      return within(rule.share, values);
    case "repeats":
      return repeats(rule.readings, values);
    case "most":
      return most(values);
    case "notMore":
      return notMore(rule, values);
    case "notLess":
      return notLess(rule.share, values);
  }
}

const folded = (name: string) => name.trim().replace(/\s+/g, " ").toLowerCase();

/** What is missing of the names and the day; null when all is there. */
function unsigned(check: AxisCheck, { by, witness, on }: CheckEntry): CheckVerdict | null {
  if (folded(by) === "") return missing("who did it");
  if (on === null) return missing("the day");
  if (!check.twoNames) return null;
  if (folded(witness) === "") return missing("a second name, as this check is about safety");
  return folded(witness) === folded(by) ? missing("a second name that is not the first") : null;
}

/**
 * Whether one check of an axis is passed, by its rule.
 *
 * A value that fails is said before a name that is missing. Not applicable needs a reason and who says so.
 */
export function judgeCheck(check: AxisCheck, entry: CheckEntry): CheckVerdict {
  if (entry.notApplicable.trim() !== "") {
    const open = unsigned(check, entry);
    return open ?? { state: "not-applicable", reason: `Does not apply: ${entry.notApplicable.trim()}` };
  }
  const { rule } = check;
  const verdict = rule.kind === "confirmed" ? confirmed(entry) : measured(rule, entry);
  return verdict.state === "passed" ? (unsigned(check, entry) ?? verdict) : verdict;
}

function confirmed({ confirmed: said }: CheckEntry): CheckVerdict {
  if (said === null) return missing("the result");
  return said ? passed("Said to be passed") : failed("Said to be not passed");
}
