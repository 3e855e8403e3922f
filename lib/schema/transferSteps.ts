/** How far a transfer has come. */
export type TransferState = "proposed" | "agreed" | "refused" | "sent" | "received" | "withdrawn";

/** Whose people take a step: those of the site that gives, of the site that gets, or of either. */
export type TransferSide = "giver" | "taker" | "either";

export interface TransferStep {
  readonly from: TransferState;
  readonly to: TransferState;
  readonly side: TransferSide;
  /** Takes an earlier step back. */
  readonly back: boolean;
}

/** What can be done with a transfer, by name. */
export const transferSteps = {
  agree: { from: "proposed", to: "agreed", side: "giver", back: false },
  refuse: { from: "proposed", to: "refused", side: "giver", back: false },
  withdraw: { from: "proposed", to: "withdrawn", side: "either", back: false },
  send: { from: "agreed", to: "sent", side: "giver", back: false },
  receive: { from: "sent", to: "received", side: "taker", back: false },
  "agree-back": { from: "agreed", to: "proposed", side: "giver", back: true },
  "refuse-back": { from: "refused", to: "proposed", side: "giver", back: true },
  "withdraw-back": { from: "withdrawn", to: "proposed", side: "either", back: true },
  "send-back": { from: "sent", to: "agreed", side: "giver", back: true },
  "receive-back": { from: "received", to: "sent", side: "taker", back: true },
} as const satisfies Record<string, TransferStep>;

export type TransferStepName = keyof typeof transferSteps;

export const TRANSFER_STEPS = Object.keys(transferSteps) as [TransferStepName, ...TransferStepName[]];

/** The step that takes the state back to where it was before; null where it is the first. */
export function stepBack(state: TransferState): TransferStepName | null {
  return (
    TRANSFER_STEPS.find((name) => transferSteps[name].back && transferSteps[name].from === state) ?? null
  );
}

/** The steps somebody may take who acts for the giving site, the taking one, or both. */
export function stepsOpen(
  state: TransferState,
  may: { readonly giver: boolean; readonly taker: boolean },
): TransferStepName[] {
  return TRANSFER_STEPS.filter((name) => {
    const { from, side } = transferSteps[name];
    return from === state && (side === "either" ? may.giver || may.taker : may[side]);
  });
}
