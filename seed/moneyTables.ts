import type { IsoDate } from "@/lib/kernel/isoDate";
import type { CostClass } from "@/lib/schema/costClass";

export interface CostEntryRow {
  readonly id: string;
  readonly projectId: string;
  readonly kind: "committed" | "actual";
  readonly amount: string;
  readonly spentOn: IsoDate;
  readonly text: string;
  readonly reference: string;
  readonly costClass: CostClass;
  readonly orderReference: string | null;
  readonly ownAmount: string | null;
  readonly ownCurrency: string | null;
  readonly rate: string | null;
  readonly ratedOn: IsoDate | null;
  readonly rateSource: string | null;
}

export interface BudgetItemRow {
  readonly projectId: string;
  readonly costClass: CostClass;
  readonly amount: string;
}

export interface ChangeOrderRow {
  readonly id: string;
  readonly projectId: string;
  readonly number: number;
  readonly what: string;
  readonly why: string;
  readonly source: "contingency" | "new_money";
  readonly state: "asked" | "approved" | "declined";
  readonly askedBy: string;
  readonly askedOn: IsoDate;
  readonly decidedBy: string | null;
  readonly decidedOn: IsoDate | null;
  readonly decisionWhy: string | null;
}

export interface ChangeAmountRow {
  readonly changeId: string;
  readonly costClass: CostClass;
  readonly amount: string;
}

export interface ClassForecastRow {
  readonly projectId: string;
  readonly costClass: CostClass;
  readonly toOrder: string;
  readonly statedOn: IsoDate;
  readonly statedBy: string;
}

export interface MonthRateRow {
  readonly currency: string;
  readonly month: IsoDate;
  readonly perEuro: number;
  readonly source: string;
  readonly recordedBy: string;
}
