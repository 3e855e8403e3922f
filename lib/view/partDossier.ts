import type { IsoDate } from "@/lib/kernel/isoDate";
import type { LifecycleDates, SupplyStage } from "@/lib/lifecycle/supplyStage";
import type { Deduction, Evidence, ItemClass, PoolResult } from "@/lib/risk/evaluation";
import type { AssumptionChoice } from "@/lib/schema/assumptions";
import type { StockState } from "@/lib/spares/usableCount";

/** A part named on another part's page. */
export interface PartName {
  readonly id: string;
  readonly maker: string;
  readonly number: string;
}

/** One sourced statement about the supply of the part or its family. */
export interface SupplyFact extends Omit<LifecycleDates, "checkedOn"> {
  readonly id: string;
  readonly about: "part" | "family";
  readonly source: string;
  readonly checkedOn: IsoDate;
  /** Day it became known here. */
  readonly recordedOn: IsoDate;
  readonly evidence: Evidence;
}

/** A place the part belongs in or sits in. */
export interface PartPlace {
  readonly id: string;
  readonly siteCode: string;
  readonly siteName: string;
  readonly lineCode: string;
  readonly lineName: string;
  readonly machineCode: string;
  readonly machineName: string;
  readonly axisCode: string | null;
  readonly designation: string;
  /** Null is no unit recorded in the place. */
  readonly serial: string | null;
  readonly revision: string | null;
  /** Null is before records began, or no unit recorded. */
  readonly sinceOn: IsoDate | null;
  readonly evidence: Evidence;
}

/** The figures of a stock lot a person may change. */
export interface StoredLot {
  readonly state: StockState;
  /** Pieces; null is not counted. */
  readonly quantity: number | null;
  readonly lastPoweredOn: IsoDate | null;
  readonly countedOn: IsoDate | null;
}

/** Pieces of one state in one bin. */
export interface PartLot extends StoredLot {
  readonly id: string;
  readonly siteCode: string;
  readonly siteName: string;
  readonly bin: string;
  readonly revision: string;
  readonly reservedFor: string | null;
  readonly note: string | null;
  readonly evidence: Evidence;
  /** Whether the reader may change it. */
  readonly mayChange: boolean;
  /** Chance that one of its pieces works when needed, in [0, 1]. */
  readonly works: number;
  /** Pieces expected to work. */
  readonly usable: number;
}

/** Book and usable pieces of one site, with what was taken off. */
export interface SiteStock {
  readonly siteCode: string;
  readonly siteName: string;
  /** Null when no lot is counted. */
  readonly book: number | null;
  readonly usable: number;
  readonly deductions: readonly Deduction[];
}

/** A unit sent away for repair. */
export interface PartRepair {
  readonly id: string;
  readonly siteCode: string;
  readonly reference: string;
  readonly serial: string | null;
  readonly sentOn: IsoDate;
  readonly dueOn: IsoDate | null;
  /** Days past the promised day; 0 is not overdue, null is no day promised. */
  readonly daysOverdue: number | null;
}

/** All other sites as one unnamed sum. */
export interface Elsewhere {
  readonly installed: number;
  readonly book: number;
  readonly usable: number;
  readonly repairsOut: number;
  readonly repairsOverdue: number;
}

export type PartPool = Omit<PoolResult, "poolId" | "usableBySite" | "deductions">;

/** Everything known of one part on a day. */
export interface PartDossier extends PartName {
  readonly asOf: IsoDate;
  readonly engine: string;
  readonly dataVersion: number;
  /** Set of assumptions the figures were computed with. */
  readonly assumptionSet: AssumptionChoice;
  readonly description: string;
  readonly itemClass: ItemClass;
  readonly family: { readonly id: string; readonly name: string; readonly description: string | null } | null;
  /** Other spellings; a storeroom's own number names its site. */
  readonly aliases: readonly { readonly alias: string; readonly siteCode: string | null }[];
  readonly successors: readonly (PartName & { readonly condition: string | null })[];
  readonly successorOf: readonly (PartName & { readonly condition: string | null })[];
  readonly price: {
    readonly amount: string;
    readonly currency: string;
    readonly pricedOn: IsoDate | null;
  } | null;
  readonly leadWeeks: number | null;
  readonly leadWeeksP80: number | null;
  readonly repairYield: number | null;
  readonly repairTurnaroundDays: number | null;
  /** Rated power, kW. */
  readonly powerKw: number | null;
  /** Number of the communication profile family it speaks. */
  readonly profileFamily: number | null;
  readonly stage: SupplyStage;
  readonly dates: LifecycleDates;
  /** Newest first; the first of the part, else of the family, is in force. */
  readonly facts: readonly SupplyFact[];
  readonly factInForce: string | null;
  readonly places: readonly PartPlace[];
  readonly lots: readonly PartLot[];
  readonly stock: readonly SiteStock[];
  readonly repairs: readonly PartRepair[];
  /** Null when the reader sees all sites. */
  readonly elsewhere: Elsewhere | null;
  /** Null when the part is neither installed nor on a shelf. */
  readonly pool: PartPool | null;
}
