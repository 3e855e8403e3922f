import type { IsoDate } from "@/lib/kernel/isoDate";
import type { ReviewTopic } from "@/lib/view/reviewRecord";

/** Something to be done that came up in a review. */
interface ToldAction {
  readonly text: string;
  /** Number of the part it is about; null is the site. */
  readonly part: string | null;
  /** Sign-in of who does it. */
  readonly owner: string;
  readonly dueOn: IsoDate;
}

/** How an action of an earlier review was settled before this one. */
interface ToldSettling {
  /** Its text. */
  readonly action: string;
  readonly on: IsoDate;
  /** Why it was dropped; null is done. */
  readonly dropped: string | null;
}

/** A weekly review of a site of the demonstration company. */
export interface HeldReview {
  readonly siteCode: string;
  readonly heldOn: IsoDate;
  readonly notes: Readonly<Partial<Record<ReviewTopic, string>>>;
  readonly settled: readonly ToldSettling[];
  readonly actions: readonly ToldAction[];
  readonly buys: readonly { readonly part: string; readonly quantity: number; readonly reason: string }[];
}

/** Who holds the reviews. */
export const REVIEW_HOST = "planner@halvenor.example";

const PLANNER = REVIEW_HOST;
const ENGINEER = "engineer.vel@halvenor.example";

const COUNT = "Count the shelf of TM-HR-020 and write down each revision";
const CHASE = "Ask the repair shop for a firm day for RO-2064";

/** Two Tuesdays, the earlier first. */
export const heldReviews: readonly HeldReview[] = [
  {
    siteCode: "VEL",
    heldOn: "2026-11-17",
    notes: {
      attendees: "Maintenance manager, spares planner, controls engineer",
      worse: "Nobody makes or repairs the QF-LU-08 any more: every piece that leaves is gone.",
      shelf: "RO-2064 has been out since July; the repair shop gives no day.",
      decisions: "No new order before the shelf of TM-HR-020 is counted.",
    },
    settled: [],
    actions: [
      { text: COUNT, part: "TM-HR-020", owner: PLANNER, dueOn: "2026-11-26" },
      { text: CHASE, part: "TM-HR-040", owner: ENGINEER, dueOn: "2026-11-20" },
      {
        text: "Look for used QF-LU-08 and have them tested before they go on the shelf",
        part: "QF-LU-08",
        owner: ENGINEER,
        dueOn: "2026-12-11",
      },
    ],
    buys: [],
  },
  {
    siteCode: "VEL",
    heldOn: "2026-11-24",
    notes: {
      attendees: "Maintenance manager, spares planner",
      dates: "Heron R has to be ordered before the end of February; the money comes from next year.",
      shelf: "The repair shop promised RO-2064 three times; a new piece is bought instead of waiting on.",
      decisions: "Two TM-HR-040 for the shelf.\nThe count of TM-HR-020 is still to come.",
    },
    settled: [{ action: CHASE, on: "2026-11-20", dropped: null }],
    actions: [
      {
        text: "Free the two lots that wait for their test report",
        part: null,
        owner: ENGINEER,
        dueOn: "2026-11-27",
      },
      { text: "Write the order for two TM-HR-040", part: "TM-HR-040", owner: PLANNER, dueOn: "2026-12-04" },
    ],
    buys: [
      { part: "TM-HR-040", quantity: 2, reason: "RO-2064 is long overdue, and the last order comes near" },
    ],
  },
];
