import { daysBetween, type IsoDate } from "@/lib/kernel/isoDate";
import type { Evidence } from "@/lib/risk/evaluation";

/** A family a notice touches, and the decision to buy that answers it. */
export interface NoticeFamily {
  readonly id: string;
  readonly name: string;
  /** Null is not decided. */
  readonly decisionId: string | null;
}

/** A notice on record. */
export interface ListedNotice {
  readonly id: string;
  readonly maker: string;
  readonly document: string;
  readonly noticeOn: IsoDate | null;
  readonly lastOrderOn: IsoDate | null;
  readonly lastShipOn: IsoDate | null;
  readonly repairUntilOn: IsoDate | null;
  readonly orderByOn: IsoDate | null;
  readonly recordedOn: IsoDate;
  readonly evidence: Evidence;
  readonly takenBack: boolean;
  readonly parts: readonly { readonly id: string; readonly number: string }[];
  readonly families: readonly NoticeFamily[];
  /** Units in service at the reader's sites. */
  readonly units: number;
}

export type NoticeState = "open" | "decided" | "passed" | "taken-back";

const NAMES: Readonly<Record<NoticeState, string>> = {
  open: "to be decided",
  decided: "decided",
  passed: "last order passed, not decided",
  "taken-back": "taken back",
};
const ORDER: readonly NoticeState[] = ["open", "decided", "passed", "taken-back"];

export interface NoticeRow extends ListedNotice {
  readonly state: NoticeState;
  /** Days to the day the order must be started in the house, below zero when it has passed; null without one. */
  readonly daysLeft: number | null;
}

/** The state in words. */
export function noticeStateName(state: NoticeState): string {
  return NAMES[state];
}

function stateOf({ takenBack, families, lastOrderOn }: ListedNotice, asOf: IsoDate): NoticeState {
  if (takenBack) return "taken-back";
  if (families.length > 0 && families.every(({ decisionId }) => decisionId !== null)) return "decided";
  return lastOrderOn !== null && lastOrderOn < asOf ? "passed" : "open";
}

/** Notices with what they still ask for: open ones first, least days left on top. */
export function noticeRows(notices: readonly ListedNotice[], asOf: IsoDate): NoticeRow[] {
  const rows = notices.map((notice): NoticeRow => {
    const by = notice.orderByOn ?? notice.lastOrderOn;
    return {
      ...{ ...notice, state: stateOf(notice, asOf) },
      daysLeft: by === null ? null : daysBetween(asOf, by),
    };
  });
  const place = ({ state }: NoticeRow) => ORDER.indexOf(state);
  const left = ({ daysLeft }: NoticeRow) => daysLeft ?? Number.MAX_SAFE_INTEGER;
  return rows.sort(
    (a, b) => place(a) - place(b) || left(a) - left(b) || (a.recordedOn < b.recordedOn ? 1 : -1),
  );
}

/** Days left in words. */
export function daysLeftWords(days: number | null): string {
  if (days === null) return "no day given";
  if (days < 0) return `${-days} ${days === -1 ? "day" : "days"} late`;
  return `${days} ${days === 1 ? "day" : "days"} left`;
}
