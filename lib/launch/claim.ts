import { mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { isRunning } from "./process";
import { Refusal } from "./refusal";

/**
 * Takes a folder for this process, so that no second start works on the same data.
 *
 * @returns Gives the folder back.
 */
export function claim(folder: string): () => void {
  mkdirSync(folder, { recursive: true });
  const file = join(folder, "claimed-by");
  while (!write(file)) {
    const owner = Number(readFileSync(file, "utf8"));
    if (isRunning(owner, "node"))
      throw new Refusal(`Ebbline already runs from this folder, as process ${owner}: stop that one first.`);
    rmSync(file, { force: true });
  }
  return () => rmSync(file, { force: true });
}

/** Whether the file was not there before. */
function write(file: string): boolean {
  try {
    writeFileSync(file, String(process.pid), { flag: "wx" });
    return true;
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === "EEXIST") return false;
    throw error;
  }
}
