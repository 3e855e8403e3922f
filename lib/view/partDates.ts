import type { IsoDate } from "@/lib/kernel/isoDate";

/** The days of supply of a part, as said on a day. */
export interface DatedPart {
  readonly lastOrderOn: IsoDate | null;
  readonly orderByOn: IsoDate | null;
  readonly lastShipOn: IsoDate | null;
  readonly repairUntilOn: IsoDate | null;
}

export type PartDateKind = "order-by" | "last-order" | "last-ship" | "repair-end";

/** A day of supply that still lies ahead, or one to start an order that was missed. */
export interface PartDate {
  readonly kind: PartDateKind;
  readonly on: IsoDate;
}

const KEYS = {
  "order-by": "orderByOn",
  "last-order": "lastOrderOn",
  "last-ship": "lastShipOn",
  "repair-end": "repairUntilOn",
} as const satisfies Record<PartDateKind, keyof DatedPart>;

/** What is ahead of a part; a passed order-by day stays while orders are still taken. */
export function partDates(part: DatedPart, asOf: IsoDate): PartDate[] {
  const taken = part.lastOrderOn !== null && part.lastOrderOn >= asOf;
  return (Object.keys(KEYS) as PartDateKind[]).flatMap((kind) => {
    const on = part[KEYS[kind]];
    if (on === null) return [];
    return on >= asOf || (kind === "order-by" && taken) ? [{ kind, on }] : [];
  });
}
