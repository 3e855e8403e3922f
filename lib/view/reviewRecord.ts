import type { IsoDate } from "@/lib/kernel/isoDate";
import type { SupplyStage } from "@/lib/lifecycle/supplyStage";
import type { ReviewFigures } from "@/lib/view/review";

/** What can be written down in a review, topic by topic. */
export const REVIEW_TOPICS = [
  { topic: "attendees", label: "Who is there", rows: 1, hint: "Functions or names, parted by commas." },
  { topic: "worse", label: "On what got worse", rows: 3, hint: "" },
  { topic: "dates", label: "On dates and orders", rows: 3, hint: "" },
  { topic: "shelf", label: "On repairs, holds and counts", rows: 3, hint: "" },
  { topic: "decisions", label: "Decisions", rows: 3, hint: "One on a line." },
] as const;

export type ReviewTopic = (typeof REVIEW_TOPICS)[number]["topic"];

export interface ReviewNoteText {
  readonly text: string;
  /** 0 is not written yet. */
  readonly version: number;
}

export type ReviewNotes = Readonly<Record<ReviewTopic, ReviewNoteText>>;

export type ActionState = "open" | "done" | "dropped";

/** Something somebody is to do by a day. */
export interface ReviewAction {
  readonly id: string;
  readonly text: string;
  readonly part: { readonly id: string; readonly number: string } | null;
  readonly line: { readonly id: string; readonly code: string } | null;
  readonly owner: { readonly id: string; readonly name: string };
  readonly raisedOn: IsoDate;
  readonly dueOn: IsoDate;
  readonly state: ActionState;
  readonly settledOn: IsoDate | null;
  readonly reason: string | null;
  readonly version: number;
}

/** A part to be bought, as decided, with what is known of its supply. */
export interface ReviewBuy {
  readonly id: string;
  readonly partId: string;
  readonly number: string;
  readonly description: string;
  /** Pieces. */
  readonly quantity: number;
  readonly reason: string;
  readonly orderByOn: IsoDate | null;
  readonly stage: SupplyStage | null;
  /** Price of a piece as on record; null is not known. */
  readonly price: {
    readonly amount: string;
    readonly currency: string;
    readonly pricedOn: IsoDate | null;
  } | null;
  readonly version: number;
}

/** One review whole: what was shown, said and decided. */
export interface ReviewRecord {
  readonly figures: ReviewFigures;
  readonly notes: ReviewNotes;
  readonly actions: readonly ReviewAction[];
  readonly buys: readonly ReviewBuy[];
}

/** A review in the list of a site. */
export interface ReviewMark {
  readonly id: string;
  readonly heldOn: IsoDate;
  readonly openedBy: string;
  /** RFC 3339; null is open. */
  readonly closedAt: string | null;
  readonly closedBy: string | null;
}

/** Whether an action should have been done before the day. */
export function isLate({ state, dueOn }: ReviewAction, asOf: IsoDate): boolean {
  return state === "open" && dueOn < asOf;
}

/** Open ones first, the longest due on top; then what was settled, the latest first. */
export function byDue(a: ReviewAction, b: ReviewAction): number {
  if ((a.state === "open") !== (b.state === "open")) return a.state === "open" ? -1 : 1;
  const order = a.state === "open" ? before(a.dueOn, b.dueOn) : before(b.settledOn ?? "", a.settledOn ?? "");
  return order || before(a.id, b.id);
}

const before = (a: string, b: string) => (a < b ? -1 : a > b ? 1 : 0);

/** What an action is about, as text and page. */
export function aboutAction({ part, line }: Pick<ReviewAction, "part" | "line">, siteCode: string) {
  if (part) return { text: part.number, href: `/parts/${part.id}` };
  if (line) return { text: line.code, href: `/lines/${line.code}` };
  return { text: siteCode, href: null };
}

const STATE_WORDS = { open: "○ open", done: "● done", dropped: "– dropped" } as const satisfies Record<
  ActionState,
  string
>;

/** State of an action in a mark and words, with its lateness. */
export function actionStateWords(action: ReviewAction, asOf: IsoDate): string {
  return isLate(action, asOf) ? "▲ late" : STATE_WORDS[action.state];
}
