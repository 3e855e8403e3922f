import { createWriteStream, mkdirSync, renameSync, rmSync, statSync } from "node:fs";
import { join } from "node:path";
import { pipeline } from "node:stream/promises";
import { checkArchive } from "@/lib/data/archive/checkArchive";
import type { Manifest } from "@/lib/data/archive/manifest";
import { noteCopy } from "@/lib/data/archive/noteCopy";
import { takeOut } from "@/lib/data/archive/takeOut";
import { connected } from "./connected";

export interface Backup {
  readonly file: string;
  readonly bytes: number;
  readonly manifest: Manifest;
}

/**
 * Writes everything of the database at `url`, with what people sign in with, into a new file of `folder` that only
 * its owner may read; it gets its name once it was read back whole.
 *
 * @param name Name of the file without its ending.
 */
export async function writeBackup(
  url: string,
  { folder, name }: { folder: string; name: string },
): Promise<Backup> {
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  const [file, part] = [join(folder, `${name}.zip`), join(folder, `${name}.part`)];
  try {
    await connected(url, (client) =>
      pipeline(takeOut(client, { withSecrets: true }), createWriteStream(part, { mode: 0o600, flags: "wx" })),
    );
    const manifest = await connected(url, async (client) => {
      const checked = await checkArchive(client, part);
      await noteCopy(client, { direction: "out", by: null, manifest: checked.manifest });
      return checked.manifest;
    });
    renameSync(part, file);
    return { file, bytes: statSync(file).size, manifest };
  } catch (error) {
    rmSync(part, { force: true });
    throw error;
  }
}
