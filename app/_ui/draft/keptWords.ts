import type { Kept } from "@/app/_ui/draft/useDraft";

/** Where what was typed is, in words. */
export const keptWords = {
  saved: "Saved",
  typed: "Typed, on this device",
  sending: "Sending",
  waiting: "No connection: kept on this device, sent when it is back",
  refused: "Not saved, kept on this device",
} as const satisfies Record<Kept, string>;
