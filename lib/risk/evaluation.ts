import type { IsoDate } from "@/lib/kernel/isoDate";
import type { LifecycleDates, SupplyStage } from "@/lib/lifecycle/supplyStage";
import type { StockState } from "@/lib/spares/usableCount";

/** What kind of thing a pool holds; rates and restoration times are pooled by it first. */
export type ItemClass =
  | "drive"
  | "motor"
  | "controller"
  | "power_supply"
  | "io"
  | "hmi"
  | "converter"
  | "network_card";

/** How well a value is known: m measured, d documented, i inferred, a assumed. */
export type Evidence = "measured" | "documented" | "inferred" | "assumed";

export interface LineInput {
  readonly id: string;
  readonly code: string;
  readonly siteId: string;
  /** EUR lost in one hour of stop beyond the buffer; null is not known. */
  readonly costPerHour: number | null;
  /** How well that cost is known; nothing but the draws reads it. */
  readonly costEvidence: Evidence;
  /** Hours a stop costs nothing; null is not known. */
  readonly bufferHours: number | null;
  /** Share of the lost hours overtime cannot recover, in [0, 1]. */
  readonly unrecoveredShare: number;
  /** EUR by any stop at all. */
  readonly fixedCost?: number;
  /** EUR more once a stop lasts longer than so many hours, e.g. a customer who stands. */
  readonly costSteps?: readonly { readonly afterHours: number; readonly cost: number }[];
}

export interface StockInput {
  readonly siteId: string;
  readonly state: StockState;
  /** Pieces; null is not counted. */
  readonly quantity: number | null;
  /** Null is not known. */
  readonly lastPoweredOn: IsoDate | null;
}

export interface PoolInput {
  /** Part id, or `unidentified:<class>` for positions whose part nobody has read. */
  readonly id: string;
  readonly itemClass: ItemClass;
  /** Rates of one family are pooled; null stands alone under its class. */
  readonly familyId: string | null;
  readonly dates: LifecycleDates;
  /** Order to receipt, years; null is not known. */
  readonly leadYears: number | null;
  /** Repair loop; null when nobody repairs it. */
  readonly repair: { readonly turnaroundYears: number; readonly yield: number } | null;
  readonly stock: readonly StockInput[];
  /** Units out for repair that will come back to the shelf. */
  readonly arrivals?: readonly ArrivalInput[];
}

/** Pieces on their way to the shelf. */
export interface ArrivalInput {
  /** Day they are due; a day not after the as-of day is overdue. */
  readonly on: IsoDate;
  /** Whole. */
  readonly pieces: number;
  /** Chance that each comes back usable, in [0, 1]; null is not recorded. */
  readonly works: number | null;
}

/** Units of one pool on one line, or on one machine of it when others can stand in for that machine. */
export interface InstalledInput {
  readonly lineId: string;
  readonly poolId: string;
  readonly units: number;
  /** Units that leave at a retrofit; the rest stays. */
  readonly leaves?: readonly LeavingInput[];
  /** The machine is one of a group that can stand in for each other; absent is in series with the rest. */
  readonly standby?: StandbyInput;
}

export interface LeavingInput {
  readonly on: IsoDate;
  readonly units: number;
  /** Tested and kept as spares, not scrapped. */
  readonly kept: boolean;
}

export interface StandbyInput {
  /** Unique in its line. */
  readonly machineId: string;
  readonly group: string;
  /** Machines the line needs of the group. */
  readonly needed: number;
}

/** What was counted of a pool, events of one common cause once. */
export interface Experience {
  readonly removals: number;
  readonly failures: number;
  readonly unitYears: number;
}

/** Counted experience of one pool at one site. */
export interface ExperienceInput extends Experience {
  readonly poolId: string;
  readonly siteId: string;
}

/** Stops of one class, summed. */
export interface RestorationInput {
  readonly itemClass: ItemClass;
  readonly spareAtHand: boolean;
  readonly stops: number;
  /** Sum of ln(hours). */
  readonly sumLog: number;
  /** Sum of ln(hours) squared. */
  readonly sumLogSquared: number;
  /** Sum of hours; absent in inputs frozen before it was read. */
  readonly sumHours?: number;
}

export interface GroupInput {
  readonly asOf: IsoDate;
  readonly lines: readonly LineInput[];
  readonly pools: readonly PoolInput[];
  readonly installed: readonly InstalledInput[];
  readonly experience: readonly ExperienceInput[];
  readonly restorations: readonly RestorationInput[];
}

/** A figure and the range it may truly have: 5 % and 95 % points. */
export interface Span {
  readonly mean: number;
  readonly low: number;
  readonly high: number;
}

export interface RateResult extends Span {
  /** Events and unit-years behind it, before borrowing from family and class. */
  readonly events: number;
  readonly unitYears: number;
  /** Gamma shape and rate (unit-years) of the posterior. */
  readonly a: number;
  readonly b: number;
  /** Mean of the prior it borrows from and the weight in unit-years. */
  readonly priorMean: number;
  readonly priorUnitYears: number;
}

export interface Deduction {
  readonly reason: StockState | "storage" | "not_counted";
  /** Pieces taken off the book count; storage is a probability, so not whole. */
  readonly pieces: number;
}

export interface PoolResult {
  readonly poolId: string;
  readonly stage: SupplyStage;
  /** Units installed in the group. */
  readonly installed: number;
  readonly removal: RateResult;
  readonly failure: RateResult;
  /** Pieces on the books; null when a lot is not counted and nothing else is there. */
  readonly book: number | null;
  /** Expected pieces that work when needed; the chances below count each piece as working or not for itself. */
  readonly usable: number;
  readonly usableBySite: Readonly<Record<string, { readonly book: number; readonly usable: number }>>;
  readonly deductions: readonly Deduction[];
  readonly removalsPerYear: number;
  /** Over the horizon of the score: units that leave at retrofits, and pieces expected to work that reach the shelf
   * from repair and from those retrofits. */
  readonly leaving: number;
  readonly arrivals: number;
  readonly released: number;
  /** Chance that a failure finds the shelf empty, by month ahead (0 … months), with span. */
  readonly noSpareByMonth: readonly Span[];
  /** Mean of that chance over the horizon of the score. */
  readonly noSpare: Span;
  /** First day the no-spare chance reaches one half and four fifths; null is beyond the months computed. */
  readonly depletionP50: IsoDate | null;
  readonly depletionP80: IsoDate | null;
  /** What was assumed because nothing was recorded. */
  readonly assumed: readonly string[];
}

/** A pool without its chances by month: all that most readers need. */
export type PoolFigures = Omit<PoolResult, "noSpareByMonth">;

/** What one stop is made of on average. */
export interface StopParts {
  /** Mean hours beyond the buffer. */
  readonly hoursBeyond: number;
  /** Chance that it passes each cost step of the line, in their order. */
  readonly stepChances: readonly number[];
}

/** A machine others can stand in for. */
export interface StandInResult extends StandbyInput {
  /** Machines of its group. */
  readonly of: number;
  /** Share of the year its own failures keep it down. */
  readonly down: number;
  /** Share of its failures that stop the line, below 1. */
  readonly stopShare: number;
}

export interface LinePoolResult {
  readonly poolId: string;
  readonly units: number;
  /** Counted of the pool at the line's site: its failure rate here rests on it. */
  readonly atSite: Experience;
  /** Failures of these units a year. */
  readonly failuresPerYear: number;
  /** Share of them that stop the line, in [0, 1]; below 1 where other machines can stand in. */
  readonly stopShare: number;
  readonly noSpare: number;
  readonly hoursWithSpare: number;
  readonly hoursWithoutSpare: number;
  /** Expected cost of one stop, EUR; null without a cost per hour. */
  readonly costWithSpare: number | null;
  readonly costWithoutSpare: number | null;
  readonly stopWithSpare: StopParts | null;
  readonly stopWithoutSpare: StopParts | null;
  readonly baseLoss: number | null;
  readonly shortageLoss: number | null;
  /** What of the loss would go were everything unknown of the pool found at its best; null without a cost per hour. */
  readonly unknownLoss: number | null;
  /** Parts of the score, each in [0, 1]. */
  readonly stagePart: number;
  readonly sparesPart: number;
  readonly repairPart: number;
  /** Chance of a failure here that stops the line within the horizon. */
  readonly failureChance: number;
  /** Share of the line's score, in [0, 1]. */
  readonly share: number;
}

export interface LineResult {
  readonly lineId: string;
  readonly score: number;
  /** The score split over its three parts; they add up to it. */
  readonly scoreParts: { readonly stage: number; readonly spares: number; readonly repair: number };
  /** EUR a year; null when the cost per hour is not known. */
  readonly stopLoss: Span | null;
  readonly baseLoss: number | null;
  readonly shortageLoss: number | null;
  /** What of the loss comes from not knowing: the loss less that at the best state; null without a cost per hour. */
  readonly unknownLoss: number | null;
  /** Loss over all years computed, EUR of the day, and its parts by year; null without a cost per hour. */
  readonly horizonLoss: {
    readonly years: number;
    readonly loss: number;
    readonly byYear: readonly number[];
  } | null;
  readonly stopsPerYear: number;
  /** The machines whose failures do not always stop it; absent when every failure does. */
  readonly standIns?: readonly StandInResult[];
  /** Earliest P80 depletion day of its pools. */
  readonly depletionP80: IsoDate | null;
  readonly depletionPoolId: string | null;
  /** Latest supply stage met on the line. */
  readonly worstStage: SupplyStage;
  readonly pools: readonly LinePoolResult[];
  readonly assumed: readonly string[];
}

export interface GroupResult {
  readonly engine: string;
  readonly asOf: IsoDate;
  readonly lines: readonly LineResult[];
  readonly pools: readonly PoolResult[];
  /** Sum over lines with a known cost per hour, EUR a year. */
  readonly stopLoss: Span;
  /** What of that comes from not knowing, EUR a year. */
  readonly unknownLoss: number;
  /** Kendall's tau-b between rank by loss and rank by score. */
  readonly agreement: number | null;
}
