import type { Done } from "@/app/(workspace)/_components/useDone";
import type { ReviewBoard } from "@/lib/data/review";
import type { IsoDate } from "@/lib/kernel/isoDate";

/** The board less what the page around it shows. */
export type Board = Omit<ReviewBoard, "sites" | "past" | "mayReview" | "mayAct">;

/** What each section needs to add an action or a purchase, and to say what was done. */
export interface Desk extends Pick<Board, "site" | "owners" | "parts" | "lines" | "showsAmounts"> {
  readonly me: string;
  readonly asOf: IsoDate;
  /** When an action is due unless said otherwise. */
  readonly dueOn: IsoDate;
  readonly mayAct: boolean;
  /** The open review, where the person may write in it; null is neither. */
  readonly reviewId: string | null;
  /** Parts on the purchase list already. */
  readonly listed: ReadonlySet<string>;
  readonly tell: (done: Done) => void;
}

/** What an action is about, and what it may say at first. */
export interface About {
  readonly partId: string | null;
  readonly lineId: string | null;
  readonly text: string;
}
