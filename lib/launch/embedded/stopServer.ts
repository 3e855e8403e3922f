import { spawn } from "node:child_process";
import { waitUntilGone } from "../process";
import { Refusal } from "../refusal";
import type { Place } from "./place";

const PATIENCE_MS = 60_000;

/** Ends the sessions and closes the database so that nothing needs recovery at the next start. */
export async function stopServer({ binaries, data, account }: Place, processId: number): Promise<void> {
  const asked = spawn(binaries.pgCtl, ["stop", "-D", data, "-m", "fast", "-W"], {
    ...account,
    cwd: data,
    detached: true,
    stdio: "ignore",
  });
  await new Promise((resolve) => asked.once("exit", resolve));
  if (await waitUntilGone(processId, "postgres", PATIENCE_MS)) return;
  throw new Refusal(`The database process ${processId} did not stop; stop it by hand before the next start.`);
}
