import { existsSync, readFileSync, rmSync } from "node:fs";
import { join } from "node:path";
import { isRunning } from "../process";

/**
 * The database process a killed start left running on this data, if any.
 *
 * A note of a process that is gone is left to PostgreSQL, which also looks for its children; it is removed
 * only where the number has passed to another program, which PostgreSQL would take for itself.
 */
export function leftoverServer(data: string): number | undefined {
  const note = join(data, "postmaster.pid");
  if (!existsSync(note)) return undefined;
  const id = Number.parseInt(readFileSync(note, "utf8"), 10);
  if (isRunning(id, "postgres")) return id;
  if (isRunning(id, "")) rmSync(note);
  return undefined;
}
