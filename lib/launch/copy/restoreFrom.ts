import { readManifest } from "@/lib/data/archive/checkArchive";
import type { Manifest } from "@/lib/data/archive/manifest";
import { takeIn } from "@/lib/data/archive/takeIn";
import { migrate } from "../migrate";
import { connected } from "./connected";

/**
 * Fills the empty database at `url` from a copy, and brings it up to date. A database without tables is first made
 * as it was when the copy was taken, so that an older copy can be restored.
 */
export async function restoreFrom(url: string, path: string): Promise<Manifest> {
  const level = await connected(url, () => readManifest(path));
  await migrate(url, undefined, level.migrations.at(-1)?.name);
  const manifest = await connected(url, (client) => takeIn(client, { path }));
  await migrate(url);
  return manifest;
}
