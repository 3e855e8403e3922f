import type { IsoDate } from "@/lib/kernel/isoDate";
import type { AxisCheck } from "@/lib/retrofit/axisChecks";

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
const text = (value: number) => String(Number(value.toPrecision(12)));

function compare(ok: boolean, words: string): CheckVerdict {
  return ok ? passed(words) : failed(words);
}

interface Values {
  readonly asFound: number | null;
  readonly limit: number | null;
  readonly asLeft: readonly number[];
}

function within(share: number, { asFound, limit, asLeft }: Values): CheckVerdict {
  if (asFound === null) return missing("the value found before removal");
  const most = Math.max(limit ?? 0, share * Math.abs(asFound));
  const off = Math.max(...asLeft.map((value) => Math.abs(value - asFound)));
  return compare(atMost(off, most), `Off ${text(asFound)} by ${text(off)}, allowed ${text(most)}`);
}

function repeats(readings: number, { asFound, limit, asLeft }: Values): CheckVerdict {
  if (limit === null) return missing("the limit");
  if (asLeft.length < readings) return missing(`${readings - asLeft.length} of ${readings} readings`);
  const range = Math.max(...asLeft) - Math.min(...asLeft);
  const mean = asLeft.reduce((sum, value) => sum + value, 0) / asLeft.length;
  const spread = `Spread ${text(range)} over ${asLeft.length}, allowed ${text(limit)}`;
  if (!atMost(range, limit) || asFound === null) return compare(atMost(range, limit), spread);
  const off = Math.abs(mean - asFound);
  return compare(atMost(off, limit), `${spread}; mean off the mark by ${text(off)}, allowed ${text(limit)}`);
}

interface NotMore {
  readonly share: number;
  readonly needsLimit: boolean;
  readonly readings: number;
}

function notMore(rule: NotMore, { asFound, limit, asLeft }: Values): CheckVerdict {
  if (asFound === null) return missing("the value found before removal");
  if (limit === null && rule.needsLimit) return missing("the limit");
  if (asLeft.length < rule.readings)
    return missing(`${rule.readings - asLeft.length} of ${rule.readings} readings`);
  const worst = Math.max(...asLeft);
  const most = Math.min(rule.share * asFound, limit ?? Number.POSITIVE_INFINITY);
  return compare(atMost(worst, most), `Worst ${text(worst)}, allowed ${text(most)}`);
}

function measured({ rule }: AxisCheck, values: Values): CheckVerdict {
  const { asFound, limit, asLeft } = values;
  const first = asLeft[0];
  if (first === undefined) return missing("the value with the new drive");
  const worst = Math.max(...asLeft);
  switch (rule.kind) {
    case "zero":
      return compare(
        asLeft.every((value) => value === 0),
        `Counted ${text(worst)}, allowed 0`,
      );
    case "within":
      return within(rule.share, values);
    case "repeats":
      return repeats(rule.readings, values);
    case "notMore":
      return notMore(rule, values);
    case "most":
      if (limit === null) return missing("the limit");
      return compare(atMost(worst, limit), `Worst ${text(worst)}, allowed ${text(limit)}`);
    default:
      if (asFound === null) return missing("the value found before removal");
      return rule.kind === "equal"
        ? compare(
            asLeft.every((value) => value === asFound),
            `${text(worst)} against ${text(asFound)}`,
          )
        : notLess(rule.kind === "notLess" ? rule.share : 1, asFound, asLeft);
  }
}

function notLess(share: number, asFound: number, asLeft: readonly number[]): CheckVerdict {
  const least = share * asFound;
  const lowest = Math.min(...asLeft);
  return compare(atMost(least, lowest), `Lowest ${text(lowest)}, at least ${text(least)}`);
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
  const verdict = check.rule.kind === "confirmed" ? confirmed(entry) : measured(check, entry);
  return verdict.state === "passed" ? (unsigned(check, entry) ?? verdict) : verdict;
}

function confirmed({ confirmed: said }: CheckEntry): CheckVerdict {
  if (said === null) return missing("the result");
  return said ? passed("Said to be passed") : failed("Said to be not passed");
}
