import type { IsoDate } from "@/lib/kernel/isoDate";
import { addMonths } from "@/lib/kernel/isoDate";
import { type CareKind, REFORM_AFTER_MONTHS } from "@/lib/risk/careIntervals";
import type { ItemClass } from "@/lib/risk/evaluation";
import type { CareState } from "@/lib/spares/careDue";
import type { StockState } from "@/lib/spares/usableCount";
import { day } from "@/lib/view/time";

/** A lot whose pieces need care from time to time. */
export interface CareLot {
  readonly lotId: string;
  readonly siteCode: string;
  readonly bin: string;
  readonly partId: string;
  readonly part: string;
  readonly revision: string;
  readonly itemClass: ItemClass;
  readonly state: StockState;
  /** Null is not counted. */
  readonly quantity: number | null;
  readonly lastPoweredOn: IsoDate | null;
  readonly kind: CareKind;
  readonly everyMonths: number;
  /** The last care of that kind; null is not known. */
  readonly lastOn: IsoDate | null;
  readonly dueOn: IsoDate | null;
  readonly care: CareState;
  readonly mayChange: boolean;
}

/** Care that was recorded, the latest first. */
export interface GivenCare {
  readonly id: string;
  readonly siteCode: string;
  readonly part: string;
  readonly bin: string;
  readonly kind: CareKind;
  readonly doneOn: IsoDate;
  readonly doneBy: string;
  readonly pieces: number;
  readonly failed: number;
  readonly note: string;
  readonly mayChange: boolean;
}

/** Pieces on hold, with who holds them and why. */
export interface HeldPieces {
  readonly id: string;
  readonly siteCode: string;
  readonly partId: string;
  readonly part: string;
  readonly bin: string;
  /** Null is not counted. */
  readonly pieces: number | null;
  /** Null where no hold was recorded when they were put there. */
  readonly heldOn: IsoDate | null;
  readonly heldBy: string | null;
  readonly reason: string | null;
}

/** How often a class needs care. */
export interface ClassCare {
  readonly itemClass: ItemClass;
  readonly kind: CareKind;
  readonly everyMonths: number | null;
  /** Null stands by the product's own list. */
  readonly changedBy: string | null;
  readonly changedOn: IsoDate | null;
}

const KINDS = { power_up: "Power up", battery: "Change the battery" } as const satisfies Record<
  CareKind,
  string
>;

/** What kinds of care there are, as choices. */
export const careKinds = Object.entries(KINDS).map(([value, label]) => ({ value: value as CareKind, label }));

/** What has to be done: unpowered for long, voltage is raised in steps. */
export function careWords({ kind, lastOn }: Pick<CareLot, "kind" | "lastOn">, asOf: IsoDate): string {
  if (kind === "battery") return KINDS.battery;
  const long = lastOn === null || addMonths(lastOn, REFORM_AFTER_MONTHS) < asOf;
  return long ? "Power up in steps, re-form" : KINDS.power_up;
}

const STATES = {
  overdue: "Overdue",
  unknown: "Never recorded",
  soon: "Due soon",
  later: "Later",
} as const satisfies Record<CareState, string>;

export const careStateName = (state: CareState): string => STATES[state];

const ORDER: readonly CareState[] = ["overdue", "unknown", "soon", "later"];

const inOrder = (a: string, b: string): number => Number(a > b) - Number(a < b);

/** What waits longest first; what nobody knows stands between overdue and due soon. */
export function byUrgency(lots: readonly CareLot[]): CareLot[] {
  const place = ({ care }: CareLot) => ORDER.indexOf(care);
  return [...lots].sort(
    (a, b) => place(a) - place(b) || inOrder(a.dueOn ?? "", b.dueOn ?? "") || inOrder(a.bin, b.bin),
  );
}

/** When it is due, in words. */
export function dueWords({ dueOn, care }: Pick<CareLot, "dueOn" | "care">): string {
  return dueOn === null ? STATES.unknown : `${STATES[care]}, ${day(dueOn)}`;
}
