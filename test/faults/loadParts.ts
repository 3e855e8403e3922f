import type { RandomStream } from "@/lib/kernel/random";
import type { Grounds } from "@/test/faults/grounds";
import type { Installation, Tools } from "@/test/faults/installation";
import type { Ledger } from "@/test/faults/ledger";

/** What every part of the load works with. */
export interface Load {
  readonly installation: Installation;
  readonly tools: Tools;
  readonly grounds: Grounds;
  readonly ledger: Ledger;
  readonly chance: RandomStream;
  /** Counts on over all rounds, so that nothing is named twice. */
  readonly next: () => number;
  readonly stopping: () => boolean;
}

export const PAUSE_MS = 250;

/** Tries again until the database does it. */
export async function untilDone<T>(run: () => Promise<T>): Promise<T> {
  for (;;) {
    try {
      return await run();
    } catch (error) {
      if (!(error instanceof Error)) throw error;
      await new Promise((resolve) => setTimeout(resolve, PAUSE_MS));
    }
  }
}
