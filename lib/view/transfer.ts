import type { TransferState, TransferStepName } from "@/lib/schema/transferSteps";

/** A step somebody took. */
export interface TakenStep {
  readonly state: TransferState;
  readonly back: boolean;
  /** RFC 3339. */
  readonly at: string;
  readonly by: string;
  readonly note: string;
}

/** A transfer as the reader sees it. */
export interface SeenTransfer {
  readonly id: string;
  readonly partId: string;
  readonly number: string;
  readonly fromSite: string;
  readonly toSite: string;
  readonly bin: string;
  readonly revision: string;
  readonly pieces: number;
  readonly state: TransferState;
  readonly refusal: string;
  /** Zone of the giving site, whose clock the steps are told by. */
  readonly timeZone: string;
  readonly steps: readonly TakenStep[];
  /** What the reader may do with it now. */
  readonly may: readonly TransferStepName[];
}

const STATES: Readonly<Record<TransferState, { readonly letter: string; readonly name: string }>> = {
  proposed: { letter: "P", name: "Proposed" },
  agreed: { letter: "A", name: "Agreed" },
  refused: { letter: "N", name: "Refused" },
  sent: { letter: "S", name: "Under way" },
  received: { letter: "R", name: "Received" },
  withdrawn: { letter: "W", name: "Withdrawn" },
};

/** What a state is called, with a letter for it. */
export function transferState(state: TransferState): { readonly letter: string; readonly name: string } {
  return STATES[state];
}

/** Whether something is still to be done. */
function isOpen({ state }: Pick<SeenTransfer, "state">): boolean {
  return state === "proposed" || state === "agreed" || state === "sent";
}

/** How many wait for a step the reader may take. */
export function waitsForReader(transfers: readonly SeenTransfer[]): number {
  return transfers.filter((transfer) => isOpen(transfer) && transfer.may.length > 0).length;
}

const STEPS: Readonly<Record<TransferStepName, string>> = {
  agree: "Agree to send",
  refuse: "Refuse",
  withdraw: "Withdraw",
  send: "Pieces are sent",
  receive: "Pieces are here",
  "agree-back": "Take agreement back",
  "refuse-back": "Think again",
  "withdraw-back": "Ask again",
  "send-back": "Not sent after all",
  "receive-back": "Not received after all",
};

/** What the button of a step says. */
export function stepName(step: TransferStepName): string {
  return STEPS[step];
}

/** A step that was taken, in words: `Agreed`, `Back to Proposed`. */
export function takenStepText({ state, back }: Pick<TakenStep, "state" | "back">): string {
  return back ? `Back to ${STATES[state].name.toLowerCase()}` : STATES[state].name;
}
