import { mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { isRunning, startOf } from "./process";
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
    const [owner, startedAt] = readFileSync(file, "utf8").split(" ");
    if (isSameProcess(Number(owner), startedAt))
      throw new Refusal(`Ebbline already runs from this folder, as process ${owner}: stop that one first.`);
    rmSync(file, { force: true });
  }
  return () => rmSync(file, { force: true });
}

/** A number alone does not do: after a container's restart the same one is given out again. */
function isSameProcess(id: number, startedAt: string | undefined): boolean {
  return isRunning(id, "node") && (startOf(id) ?? "") === (startedAt ?? "");
}

/** Whether the file was not there before. */
function write(file: string): boolean {
  try {
    writeFileSync(file, `${process.pid} ${startOf(process.pid) ?? ""}`, { flag: "wx" });
    return true;
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === "EEXIST") return false;
    throw error;
  }
}
