import type { IsoDate } from "@/lib/kernel/isoDate";
import type { LifecycleDates, SupplyStage } from "@/lib/lifecycle/supplyStage";
import type { JudgedLine } from "@/lib/retrofit/compatibility";
import type { Assumptions } from "@/lib/risk/assumptions";
import type {
  Deduction,
  Evidence,
  ItemClass,
  LinePoolResult,
  LineResult,
  RateResult,
  Span,
} from "@/lib/risk/evaluation";
import type { AssumptionChoice } from "@/lib/schema/assumptions";
import type { CostMethod } from "@/lib/schema/costMethod";
import type { ControllerFacts } from "@/lib/view/lineControllers";
import type { PlaceDossier } from "@/lib/view/linePlace";
import type { CostStep, LineCost } from "@/lib/view/lineRanking";
import type { Obligation } from "@/lib/view/obligation";

/** The figures of a line a person may change, as stored; null is not known. */
export interface StoredFigures {
  /** Decimal text, in the site's currency, as are the fixed cost and the steps. */
  readonly costPerHour: string | null;
  readonly costFixed: string | null;
  readonly costSteps: readonly CostStep[];
  readonly costMethod: CostMethod | null;
  readonly costOwner: string | null;
  readonly costApprovedOn: IsoDate | null;
  readonly costValidUntil: IsoDate | null;
  readonly costEvidence: Evidence;
  readonly bufferHours: string | null;
  readonly shiftsPerWeek: number | null;
}

/** What is known of the part behind a pool; null for places nobody has read. */
export interface DriverPart {
  readonly id: string;
  readonly maker: string;
  readonly number: string;
  readonly description: string;
  readonly family: string | null;
  readonly dates: LifecycleDates;
  readonly datesSource: string | null;
  readonly leadWeeks: number | null;
  readonly repairYield: number | null;
  readonly repairTurnaroundDays: number | null;
}

/** The pool of a driver in the whole group; other sites appear as one unnamed sum. */
export interface DriverPool {
  readonly stage: SupplyStage;
  readonly installed: number;
  readonly removal: RateResult;
  readonly failure: RateResult;
  readonly book: number | null;
  readonly usable: number;
  readonly here: { readonly book: number; readonly usable: number };
  readonly elsewhere: { readonly book: number; readonly usable: number };
  readonly deductions: readonly Deduction[];
  readonly removalsPerYear: number;
  readonly noSpare: Span;
  readonly depletionP50: IsoDate | null;
  readonly depletionP80: IsoDate | null;
  readonly assumed: readonly string[];
}

/** A pool on the line: what it adds to the loss and the score, and from what. */
export interface Driver extends LinePoolResult {
  readonly label: string;
  readonly itemClass: ItemClass;
  readonly part: DriverPart | null;
  readonly pool: DriverPool | null;
}

/** An item in its place. */
export interface PlacedItem {
  readonly itemClass: ItemClass;
  readonly designation: string;
  /** Null is not identified. */
  readonly part: { readonly id: string; readonly number: string } | null;
  /** Null is no unit recorded in the place. */
  readonly serial: string | null;
  readonly revision: string | null;
  readonly evidence: Evidence;
}

export interface AxisRow {
  readonly code: string;
  readonly name: string | null;
  readonly inServiceYear: number | null;
  readonly network: string | null;
  readonly nodeAddress: number | null;
  readonly ringOrder: number | null;
  readonly feedback: string | null;
  /** Counts for one unit of travel; null when a figure is missing. */
  readonly countsPerUnit: number | null;
  readonly travelUnit: string | null;
  readonly items: readonly PlacedItem[];
}

export interface MachineRow {
  readonly id: string;
  readonly code: string;
  readonly name: string;
  readonly inServiceYear: number | null;
  readonly controller:
    | (Omit<ControllerFacts, "step"> & {
        readonly firmwareRaw: string | null;
        /** Hardware letter and level; null is not known. */
        readonly hardware: string | null;
        /** Axes it can drive at most; null is not known. */
        readonly axisLimit: number | null;
        readonly readOn: IsoDate | null;
        readonly evidence: Evidence;
      })
    | null;
  readonly axes: readonly AxisRow[];
  /** Items of the machine that belong to no axis. */
  readonly items: readonly PlacedItem[];
}

export interface LineEvent {
  readonly id: string;
  /** Day and time at the site. */
  readonly day: IsoDate;
  readonly time: string;
  readonly kind: "failure" | "no_fault_found" | "removal";
  /** Null names neither a part, nor a place, nor a class. */
  readonly itemClass: ItemClass | null;
  readonly machine: string | null;
  readonly place: string | null;
  readonly part: { readonly id: string; readonly number: string } | null;
  readonly downtimeHours: number | null;
  readonly logisticHours: number | null;
  readonly spareAtHand: boolean | null;
  readonly source: string;
  readonly reference: string;
  readonly text: string | null;
  readonly commonCause: string | null;
  /** Why it does not count; null counts. */
  readonly setAside: string | null;
}

export interface LineProject {
  readonly code: string;
  readonly name: string;
  readonly status: string;
}

export interface LinePlan {
  readonly id: string;
  readonly name: string;
  readonly year: number;
  readonly status: string;
  readonly rank: number;
  readonly funded: boolean;
  readonly pin: "none" | "in" | "out";
}

/** Everything known of one line on a day. */
export interface LineDossier {
  readonly asOf: IsoDate;
  readonly engine: string;
  readonly dataVersion: number;
  /** Set of assumptions the figures were computed with, and its values. */
  readonly assumptionSet: AssumptionChoice;
  readonly assumptions: Assumptions;
  /** Whether amounts are shown to the reader; where not, all of them read as not known. */
  readonly showsAmounts: boolean;
  readonly id: string;
  readonly code: string;
  readonly name: string;
  readonly note: string | null;
  readonly inServiceYear: number | null;
  readonly site: {
    readonly id: string;
    readonly code: string;
    readonly name: string;
    readonly currency: string;
    readonly timeZone: string;
  };
  readonly stored: StoredFigures;
  readonly cost: LineCost;
  /** Safety and legal dates of the line and of its whole site, soonest first. */
  readonly obligations: readonly Obligation[];
  readonly unrecoveredShare: number;
  readonly rankByLoss: number | null;
  readonly rankByScore: number;
  /** How sure the place by loss is; null without a cost per hour. */
  readonly place: PlaceDossier | null;
  readonly groupLines: number;
  /** How its controllers stand against the compatibility rules in force. */
  readonly compatibility: JudgedLine;
  /** Low and high of its stop loss are the 5 % and 95 % points of the draws. */
  readonly result: LineResult;
  readonly drivers: readonly Driver[];
  readonly machines: readonly MachineRow[];
  readonly events: readonly LineEvent[];
  readonly projects: readonly LineProject[];
  readonly plans: readonly LinePlan[];
}
