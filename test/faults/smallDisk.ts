import { spawnSync } from "node:child_process";
import { chmodSync, closeSync, mkdirSync, openSync, rmSync, writeSync } from "node:fs";
import { join } from "node:path";
import { Refusal } from "@/lib/launch/refusal";

const PIECE = Buffer.alloc(64 * 1024);

/** A disk of so many megabytes in memory, mounted at the folder; only root may, on Linux. */
export function mountSmall(folder: string, megabytes: number) {
  mkdirSync(folder, { recursive: true });
  const { status, stderr } = spawnSync(
    "mount",
    ["-t", "tmpfs", "-o", `size=${megabytes}m`, "tmpfs", folder],
    {
      encoding: "utf8",
    },
  );
  if (status !== 0) throw new Refusal(`A small disk needs root and Linux: ${stderr.trim()}`);
  chmodSync(folder, 0o755);
  const filler = join(folder, "filler");
  return {
    folder,
    /** Takes all the room there is. */
    fill: () => {
      const file = openSync(filler, "w");
      try {
        for (;;) writeSync(file, PIECE);
      } catch (error) {
        if ((error as NodeJS.ErrnoException).code !== "ENOSPC") throw error;
      } finally {
        closeSync(file);
      }
    },
    makeRoom: () => rmSync(filler),
    remove: () => {
      spawnSync("umount", ["-l", folder]);
      rmSync(folder, { recursive: true, force: true });
    },
  };
}
