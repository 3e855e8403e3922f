import { explain } from "./explain";
import { hearStop } from "./hearStop";

/** One run of Ebbline, from its start to a clean stop. */
export interface Life {
  /** Fires when the run is to stop: Ctrl-C or a signal. */
  readonly stopping: AbortSignal;
  /** Remembers what must be stopped at the end, the last first. */
  endWith(stop: () => Promise<void> | void): void;
}

/**
 * Runs to the end, stops all that was started, and leaves with the status returned; 1 when it failed.
 *
 * @param stoppedEarly Status when it was asked to stop before its end: to a check that is no success.
 */
export async function live(run: (life: Life) => Promise<number>, stoppedEarly: 0 | 1): Promise<never> {
  const asked = new AbortController();
  hearStop(() => asked.abort());
  const stops: (() => Promise<void> | void)[] = [];
  let status: number = stoppedEarly;
  try {
    status = await run({ stopping: asked.signal, endWith: (stop) => stops.push(stop) });
  } catch (error) {
    if (!asked.signal.aborted) status = tell(error);
  }
  if (asked.signal.aborted) console.log("Stopping …");
  for (const stop of stops.reverse()) {
    try {
      await stop();
    } catch (error) {
      status = tell(error);
    }
  }
  process.exit(status);
}

function tell(error: unknown): 1 {
  console.error(explain(error));
  return 1;
}
