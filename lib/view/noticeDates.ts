import type { IsoDate } from "@/lib/kernel/isoDate";
import type { LifecycleDates } from "@/lib/lifecycle/supplyStage";

/** The days a statement about supply carries. */
export type NoticeDates = Omit<LifecycleDates, "checkedOn">;
export type NoticeDateField = keyof NoticeDates;

export const NOTICE_DATE_NAMES: Readonly<Record<NoticeDateField, string>> = {
  noticeOn: "Notice",
  lastOrderOn: "Last order",
  lastShipOn: "Last shipment",
  repairUntilOn: "Repair until",
  orderByOn: "Start the order by",
};
export const NOTICE_DATE_FIELDS = Object.keys(NOTICE_DATE_NAMES) as NoticeDateField[];

/** A stored statement about supply. */
export interface DatedFact extends NoticeDates {
  readonly id: string;
  readonly source: string;
  readonly checkedOn: IsoDate;
  readonly recordedOn: IsoDate;
}

/**
 * What holds once a notice is recorded: its own days, and from the statement before those it does not name.
 *
 * The source says so, as one statement stands for all its days.
 */
export function mergeNoticeDates(
  before: DatedFact | null,
  told: NoticeDates & { readonly document: string },
): { dates: NoticeDates; source: string } {
  const kept = NOTICE_DATE_FIELDS.filter(
    (field) => told[field] === null && before !== null && before[field] !== null,
  );
  const dates = Object.fromEntries(
    NOTICE_DATE_FIELDS.map((field) => [field, told[field] ?? before?.[field] ?? null]),
  ) as unknown as NoticeDates;
  if (before === null || kept.length === 0) return { dates, source: told.document };
  const names = kept.map((field) => NOTICE_DATE_NAMES[field].toLowerCase()).join(", ");
  return { dates, source: `${told.document}; ${names} as in ${before.source}` };
}

/** Days a notice changes that were on record otherwise. */
export function overwrittenDates(before: DatedFact | null, after: NoticeDates) {
  return NOTICE_DATE_FIELDS.flatMap((field) => {
    const old = before?.[field] ?? null;
    return before === null || old === null || old === after[field]
      ? []
      : [{ field, before: old, after: after[field], source: before.source }];
  });
}

const isBefore = (a: IsoDate | null, b: IsoDate | null) => a !== null && b !== null && a < b;

/** Days that cannot both hold, as the later one's field and a sentence; null where all can. */
export function clashOf({
  noticeOn,
  lastOrderOn,
  lastShipOn,
}: NoticeDates): { field: NoticeDateField; sentence: string } | null {
  if (isBefore(lastOrderOn, noticeOn))
    return { field: "lastOrderOn", sentence: `It lies before the notice, ${noticeOn}.` };
  return isBefore(lastShipOn, lastOrderOn)
    ? { field: "lastShipOn", sentence: `The last shipment, ${lastShipOn}, lies before the last order.` }
    : null;
}

/** What is odd about the order of the days, as sentences; a person may know better. */
export function oddDates({ lastOrderOn, repairUntilOn }: NoticeDates): string[] {
  return isBefore(repairUntilOn, lastOrderOn) ? ["Repair ends before the last order."] : [];
}
