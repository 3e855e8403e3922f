import { readFileSync, type Stats, statSync } from "node:fs";
import { dirname } from "node:path";
import { Refusal } from "../refusal";

export interface Account {
  readonly uid: number;
  readonly gid: number;
}

/** The account a database of root must run as, since PostgreSQL refuses root; undefined for anybody else. */
export function unprivilegedAccount(): Account | undefined {
  if (process.getuid?.() !== 0) return undefined;
  const lines = readFileSync("/etc/passwd", "utf8").split("\n");
  for (const name of ["postgres", "nobody"]) {
    const [, , uid, gid] = lines.find((line) => line.startsWith(`${name}:`))?.split(":") ?? [];
    if (uid && gid) return { uid: Number(uid), gid: Number(gid) };
  }
  throw new Refusal(
    "PostgreSQL does not run as root and this machine has neither a postgres nor a nobody account: start Ebbline from another account.",
  );
}

const EXECUTE = 0o1;
const READ = 0o4;

/** Whether the account may enter the folder and those above it. */
export function mayEnter(folder: string, account: Account): boolean {
  if (!may(statSync(folder), account, EXECUTE)) return false;
  const above = dirname(folder);
  return above === folder || mayEnter(above, account);
}

export function mayReadAndRun(file: string, account: Account): boolean {
  return mayEnter(dirname(file), account) && may(statSync(file), account, READ | EXECUTE);
}

function may(stats: Stats, { uid, gid }: Account, wanted: number): boolean {
  const digit = stats.uid === uid ? 6 : stats.gid === gid ? 3 : 0;
  return ((stats.mode >> digit) & wanted) === wanted;
}
