import { existsSync, readFileSync } from "node:fs";

const PARENT_LOOK_MS = 300;
const SIGHUP_BIT = 1n;

/** Calls `stop` when the process is asked to end: Ctrl-C, a signal, a closed terminal, npm gone. */
export function hearStop(stop: () => void): void {
  for (const name of ["SIGINT", "SIGTERM"] as const) process.on(name, stop);
  if (!isHangUpIgnored()) process.on("SIGHUP", stop);
  if (process.env.npm_lifecycle_event === undefined) return;
  // npm passes a signal to the shell between it and this process, and that shell keeps it for itself.
  const parent = process.ppid;
  setInterval(() => {
    if (process.ppid !== parent) stop();
  }, PARENT_LOOK_MS).unref();
}

/** Whether the start was made to outlive its terminal, as `nohup` does. */
function isHangUpIgnored(): boolean {
  const status = "/proc/self/status";
  if (!existsSync(status)) return false;
  const mask = /^SigIgn:\s*([0-9a-f]+)$/m.exec(readFileSync(status, "utf8"))?.[1] ?? "0";
  return (BigInt(`0x${mask}`) & SIGHUP_BIT) !== 0n;
}
