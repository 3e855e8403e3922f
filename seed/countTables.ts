import type { IsoDate } from "@/lib/kernel/isoDate";
import type { StockState } from "@/lib/spares/usableCount";

export interface RepairOrderRow {
  readonly id: string;
  readonly siteId: string;
  readonly partId: string;
  readonly reference: string;
  readonly serial: string | null;
  readonly sentOn: IsoDate;
  readonly dueOn: IsoDate | null;
  readonly returnedOn: IsoDate | null;
  readonly finding: string | null;
  readonly repairer: string | null;
  readonly fault: string | null;
  /** Decimal text. */
  readonly cost: string | null;
  readonly costCurrency: string | null;
  readonly warrantyUntilOn: IsoDate | null;
}

export interface StockCountRow {
  readonly id: string;
  readonly siteId: string;
  readonly reference: string;
  readonly bins: string;
  readonly blind: boolean;
  readonly limitEuro: number;
  readonly openedOn: IsoDate;
  readonly openedBy: string;
  readonly approvedOn: IsoDate | null;
  readonly approvedBy: string | null;
  readonly postedOn: IsoDate | null;
  readonly postedBy: string | null;
  /** JSON text. */
  readonly steps: string | null;
}

export interface CountLineRow {
  readonly id: string;
  readonly countId: string;
  readonly lotId: string | null;
  readonly partId: string | null;
  readonly plate: string;
  readonly bin: string;
  readonly revision: string;
  readonly bookState: StockState | null;
  readonly bookQuantity: number | null;
  readonly bookPoweredOn: IsoDate | null;
  readonly found: number | null;
  readonly state: StockState | null;
  readonly tested: boolean | null;
  readonly originUnknown: boolean;
  readonly holdReason: string;
  readonly note: string;
  readonly countedBy: string;
  readonly countedById: string | null;
  readonly version: number;
}
