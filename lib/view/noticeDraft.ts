import {
  type FoundDate,
  NOTICE_DATES,
  type NoticeDateKind,
  proposedDay,
} from "@/lib/intake/notice/noticeDate";
import type { NoticeProposal } from "@/lib/intake/notice/readNotice";
import { type IsoDate, isIsoDate } from "@/lib/kernel/isoDate";
import { orderBy, type PurchaseCycle } from "@/lib/lifecycle/orderBy";
import type { TypedNotice } from "@/lib/schema/notice";

/** A notice while it is being typed: weeks are text until they are sent. */
export type NoticeDraft = Omit<TypedNotice, keyof PurchaseCycle> & Record<keyof PurchaseCycle, string>;

/** The form before anything is typed. */
export function emptyDraft(today: IsoDate, cycle: PurchaseCycle): NoticeDraft {
  return {
    ...{ maker: "", document: "", patterns: "", successor: "", note: "", checkedOn: today },
    ...{ noticeOn: "", lastOrderOn: "", lastShipOn: "", repairUntilOn: "", evidence: "documented" },
    ...{ quoteWeeks: String(cycle.quoteWeeks), approvalWeeks: String(cycle.approvalWeeks) },
    purchaseWeeks: String(cycle.purchaseWeeks),
  };
}

/** The days typed so far. */
export function typedDays(draft: NoticeDraft): Partial<Record<NoticeDateKind, IsoDate>> {
  return Object.fromEntries(
    NOTICE_DATES.flatMap((kind) => (isIsoDate(draft[kind]) ? [[kind, draft[kind]]] : [])),
  );
}

/** Days as far as they can be read in one way; what counts from another day follows that one. */
function settledDays(dates: readonly FoundDate[]): Partial<Record<NoticeDateKind, IsoDate>> {
  const known: Partial<Record<NoticeDateKind, IsoDate>> = {};
  for (const _round of NOTICE_DATES)
    for (const kind of NOTICE_DATES) {
      const [only, ...more] = proposedDay(kind, dates, known);
      if (only && more.length === 0) known[kind] = only.on;
    }
  return known;
}

/** The form with what was found in a text put where nothing is typed yet. */
export function filledDraft(draft: NoticeDraft, found: NoticeProposal): NoticeDraft {
  const days = settledDays(found.dates);
  const text = (own: string, proposed: string) => (own.trim() === "" ? proposed : own);
  return {
    ...draft,
    maker: text(draft.maker, found.maker),
    document: text(draft.document, found.document),
    patterns: text(draft.patterns, found.patterns.join("\n")),
    successor: text(draft.successor, found.successor),
    ...Object.fromEntries(NOTICE_DATES.map((kind) => [kind, text(draft[kind], days[kind] ?? "")])),
  };
}

/** What is sent. */
export function sentNotice(draft: NoticeDraft): TypedNotice {
  const weeks = (text: string) => (text.trim() === "" ? Number.NaN : Number(text.replace(",", ".")));
  return {
    ...draft,
    quoteWeeks: weeks(draft.quoteWeeks),
    approvalWeeks: weeks(draft.approvalWeeks),
    purchaseWeeks: weeks(draft.purchaseWeeks),
  };
}

/** The day to start the order by, as far as it can be worked out from what is typed. */
export function draftOrderBy(draft: NoticeDraft): IsoDate | null {
  const { quoteWeeks, approvalWeeks, purchaseWeeks } = sentNotice(draft);
  const weeks = [quoteWeeks, approvalWeeks, purchaseWeeks];
  if (!isIsoDate(draft.lastOrderOn) || !weeks.every((one) => one >= 0 && one <= 104)) return null;
  return orderBy(draft.lastOrderOn, { quoteWeeks, approvalWeeks, purchaseWeeks });
}
