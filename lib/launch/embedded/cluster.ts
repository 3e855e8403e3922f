import { spawnSync } from "node:child_process";
import { randomBytes } from "node:crypto";
import { chownSync, existsSync, mkdirSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { keptText } from "../keptText";
import { Refusal } from "../refusal";
import type { Place } from "./place";

export const SUPERUSER = "ebbline";

/** Makes the data folder at the first start, whole or not at all. @returns The superuser's password. */
export function makeCluster(place: Place): string {
  const password = keptText(join(place.folder, "password"), () => randomBytes(24).toString("base64url"));
  if (existsSync(place.data)) return password;
  const fresh = `${place.data}.new`;
  const passwordFile = `${place.data}.password`;
  rmSync(fresh, { recursive: true, force: true });
  mkdirSync(fresh, { mode: 0o700 });
  writeFileSync(passwordFile, password, { mode: 0o600 });
  try {
    for (const path of [fresh, passwordFile])
      if (place.account) chownSync(path, place.account.uid, place.account.gid);
    initialise(place, fresh, passwordFile);
    renameSync(fresh, place.data);
  } finally {
    rmSync(passwordFile, { force: true });
    rmSync(fresh, { recursive: true, force: true });
  }
  return password;
}

function initialise({ binaries, account }: Place, folder: string, passwordFile: string): void {
  const { status, stderr, error } = spawnSync(
    binaries.initdb,
    [
      `--pgdata=${folder}`,
      `--username=${SUPERUSER}`,
      `--pwfile=${passwordFile}`,
      "--auth=scram-sha-256",
      "--encoding=UTF8",
      "--locale=C",
      // Sorts and folds letters the same on every machine, whatever languages it has installed.
      "--locale-provider=builtin",
      "--builtin-locale=C.UTF-8",
    ],
    { ...account, cwd: folder, encoding: "utf8" },
  );
  if (status === 0) return;
  const reason = error?.message ?? lastError(stderr);
  throw new Refusal(`The database could not be made in ${folder}: ${reason}.`);
}

/** The sentence of PostgreSQL's output that tells what went wrong. */
export function lastError(output: string): string {
  const lines = output.trim().split("\n");
  const told = lines.findLast((line) => /(FATAL|PANIC|error):/.test(line)) ?? lines.at(-1) ?? "";
  return told.replace(/^.*?(FATAL|PANIC|error):\s*/, "").replace(/\.$/, "");
}
