import type { IsoDate } from "@/lib/kernel/isoDate";
import {
  type BenefitState,
  compareRates,
  type Experience,
  type LivedStretch,
  livedStretch,
  type RateVerdict,
  type Stretch,
} from "@/lib/projects/benefit";
import type { ReleaseResult } from "@/lib/projects/closeOut";
import type { StopCostTerms } from "@/lib/risk/expectedStopCost";
import { money } from "@/lib/view/format";
import { count, NOT_KNOWN, plainNumber, significant } from "@/lib/view/number";
import type { ProjectHead } from "@/lib/view/projectHead";
import { hours } from "@/lib/view/time";

/** What was asked for and what was paid, EUR; null is not known. */
export interface BenefitRequest {
  /** Cost of the plan's line. */
  readonly cost: number | null;
  /** Stop loss of the line in its first year, as the plan had it. */
  readonly stopLoss: number | null;
  readonly budget: number | null;
  readonly paid: number | null;
}

/** What the records say of the line before and after. */
export interface BenefitFacts {
  readonly before: Stretch;
  readonly after: Stretch;
  readonly whole: boolean;
  /** What a stop costs; null is not known. */
  readonly cost: StopCostTerms | null;
  readonly experienceBefore: Experience;
  readonly experienceAfter: Experience;
  readonly released: readonly (ReleaseResult | null)[];
  readonly request: BenefitRequest;
}

/** The comparison as it is shown, and as it is kept once checked. */
export interface BenefitFigures {
  readonly before: Stretch & LivedStretch;
  readonly after: Stretch & LivedStretch;
  readonly whole: boolean;
  readonly rate: RateVerdict;
  readonly released: { readonly out: number; readonly usable: number };
  readonly request: BenefitRequest;
}

export interface BenefitFile extends ProjectHead {
  readonly closing: {
    readonly closedOn: IsoDate;
    readonly checkOn: IsoDate;
    readonly checkedOn: IsoDate | null;
    readonly checkedBy: string | null;
    readonly conclusion: string | null;
  } | null;
  /** Null while the project is not closed. */
  readonly figures: BenefitFigures | null;
}

/** Compares the year before with the time after. */
export function benefitFigures(facts: BenefitFacts): BenefitFigures {
  const { before, after, whole, cost, released, request } = facts;
  const lived = {
    before: livedStretch(facts.experienceBefore, cost),
    after: livedStretch(facts.experienceAfter, cost),
  };
  return {
    before: { ...before, ...lived.before },
    after: { ...after, ...lived.after },
    ...{ whole, rate: compareRates(lived.before, lived.after), request },
    released: { out: released.length, usable: released.filter((result) => result === "usable").length },
  };
}

export interface BenefitRow {
  readonly label: string;
  readonly before: string;
  readonly after: string;
  readonly said: string;
}

const rateWords = ({ removalRate: rate }: LivedStretch): string =>
  rate === null
    ? NOT_KNOWN
    : `${significant(rate.mean, 2)} (${significant(rate.low, 2)} to ${significant(rate.high, 2)})`;

const moneyWords = (value: number | null) => (value === null ? NOT_KNOWN : money(value));

const leftWords = (value: number | null) => (value === null ? NOT_KNOWN : `${money(value)} are left`);

const RATE_WORDS: Readonly<Record<RateVerdict, string>> = {
  lower: "lower: the two spans do not touch",
  higher: "higher: the two spans do not touch",
  "not-told-apart": "cannot be told apart: the two spans overlap",
  unknown: "not known: there is no time to count",
};

const withoutHours = ({ before, after }: BenefitFigures): string => {
  const missing = before.withoutHours + after.withoutHours;
  return missing === 0
    ? ""
    : `${count(missing, "event does", "events do")} not say how long the line stood: in no sum`;
};

/** Before and after, thing by thing. */
export function benefitRows(figures: BenefitFigures): BenefitRow[] {
  const { before, after } = figures;
  return [
    {
      ...{ label: "Events that count", before: plainNumber(before.events), after: plainNumber(after.events) },
      said: "",
    },
    {
      ...{ label: "Hours the line stood", before: hours(before.downtimeHours) },
      ...{ after: hours(after.downtimeHours), said: withoutHours(figures) },
    },
    {
      ...{ label: "Money of the stops", before: moneyWords(before.stopMoney) },
      ...{ after: moneyWords(after.stopMoney), said: "both at today's cost of a stop" },
    },
    {
      ...{
        label: "Drives removed",
        before: plainNumber(before.removals),
        after: plainNumber(after.removals),
      },
      said: `${significant(before.unitYears, 3)} and ${significant(after.unitYears, 3)} drive-years`,
    },
    {
      ...{ label: "Removals per drive and year, 90 %", before: rateWords(before), after: rateWords(after) },
      said: RATE_WORDS[figures.rate],
    },
  ];
}

export interface PromiseRow {
  readonly label: string;
  readonly promised: string;
  readonly came: string;
}

/** What was asked for against what came. */
export function promiseRows({ request, after, whole, released }: BenefitFigures): PromiseRow[] {
  return [
    {
      ...{ label: "Cost, plan's line", promised: moneyWords(request.cost), came: moneyWords(request.paid) },
    },
    { label: "Cost, budget", promised: moneyWords(request.budget), came: moneyWords(request.paid) },
    {
      ...{ label: "Stop loss in a year that was to go", promised: moneyWords(request.stopLoss) },
      came: whole ? leftWords(after.stopMoney) : "too early to say",
    },
    {
      ...{ label: "Parts released", promised: `${released.out} came out` },
      came: `${released.usable} usable`,
    },
    { label: "Hours of work", promised: NOT_KNOWN, came: "no hours are recorded" },
  ];
}

/** The sentence the page begins with. */
export function benefitLead(state: BenefitState): string {
  switch (state) {
    case "not-closed":
      return "The project is not closed, so there is nothing to compare yet.";
    case "too-early":
      return "Too early: a whole year after closing has not passed. What is known so far is shown and judged by nobody.";
    case "due":
      return "The check is due: compare, write down what came of it, and what the next request should do otherwise.";
    case "checked":
      return "Checked. The figures are those of the day of the check.";
    default:
      return state satisfies never;
  }
}
