import { chmodSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { dirname, join } from "node:path";
import { keepText } from "../keptText";
import { type Account, mayEnter, mayReadAndRun, unprivilegedAccount } from "./account";
import { type Binaries, copyBinaries, findBinaries } from "./binaries";

/** Where one embedded database lives and which programs and account run it. */
export interface Place {
  /** Password, port and log. */
  readonly folder: string;
  readonly data: string;
  readonly binaries: Binaries;
  readonly account: Account | undefined;
}

/** Below here root keeps what an unprivileged account must reach and must outlive a cleaning of temporary files. */
const SHARED_ROOT = "/var/lib";

/**
 * Prepares the place of the database kept in `folder`.
 *
 * Below a folder closed to the account it runs as, such as root's home, data and programs go elsewhere, and
 * `folder` notes where.
 */
export async function preparePlace(folder: string): Promise<Place> {
  mkdirSync(folder, { recursive: true });
  const binaries = await findBinaries();
  const account = unprivilegedAccount();
  if (!account || (mayEnter(folder, account) && mayReadAndRun(binaries.postgres, account)))
    return { folder, data: join(folder, "data"), binaries, account };
  const moved = movedTo(folder) ?? move(folder);
  return { folder: moved, data: join(moved, "data"), binaries: copyBinaries(binaries, moved), account };
}

/** Where the password, the port and the data of the database kept in `folder` are. */
export function placeOf(folder: string): string {
  return movedTo(folder) ?? folder;
}

/** Removes all that the database of `folder` left. */
export function wipePlace(folder: string): void {
  const moved = existsSync(folder) ? movedTo(folder) : undefined;
  for (const gone of [moved, folder]) if (gone) rmSync(gone, { recursive: true, force: true });
}

const note = (folder: string) => join(folder, "moved-to");

function movedTo(folder: string): string | undefined {
  if (!existsSync(note(folder))) return undefined;
  const moved = readFileSync(note(folder), "utf8");
  return existsSync(moved) && dirname(moved) === SHARED_ROOT ? moved : undefined;
}

function move(folder: string): string {
  const moved = mkdtempSync(join(SHARED_ROOT, "ebbline-"));
  chmodSync(moved, 0o755);
  keepText(note(folder), moved);
  return moved;
}
