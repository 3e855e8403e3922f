import "server-only";
import { Client } from "pg";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import { scopeOf } from "@/lib/access/policy";
import { ArchiveRefusal } from "@/lib/data/archive/checkArchive";
import type { Manifest } from "@/lib/data/archive/manifest";
import { noteCopy } from "@/lib/data/archive/noteCopy";
import { takeIn } from "@/lib/data/archive/takeIn";
import { takeOut } from "@/lib/data/archive/takeOut";
import { database } from "@/lib/data/client";
import { databaseUrl } from "@/lib/env";
import { err, ok, type Result } from "@/lib/kernel/result";
import type { CopyNote } from "@/lib/view/wholeCopy";

/** What an administrator of all sites sees of copies of the installation. */
export interface CopyDesk {
  readonly copies: readonly CopyNote[];
  /** Nothing is recorded yet and nobody else has an account, so a copy can be taken in. */
  readonly empty: boolean;
}

const notAllowed: Refusal = {
  code: "forbidden",
  reason: "Only an administrator of all sites takes the whole installation out or in.",
};
const MOST_LISTED = 20;

const rules = (actor: Actor) => scopeOf(actor.grants, "people:write") === "all";

/** The last copies, and whether one can be taken in; null for who may do neither. */
export async function readCopyDesk(actor: Actor): Promise<CopyDesk | null> {
  if (!rules(actor)) return null;
  const db = database();
  const [rows, [found]] = await Promise.all([
    db.wholeCopy.findMany({ orderBy: { at: "desc" }, take: MOST_LISTED }),
    db.$queryRaw<[{ unused: boolean }]>`SELECT is_unused(${actor.userId}) AS unused`,
  ]);
  return {
    copies: rows.map(({ at, rows: held, ...row }) => ({
      ...row,
      at: at.toISOString(),
      rows: Number(held),
    })),
    empty: found.unused,
  };
}

/** The whole installation as an archive without secrets, read while it is fetched; `end` must be called at its end. */
export async function takeOutWhole(
  actor: Actor,
): Promise<Result<{ pieces: AsyncGenerator<Uint8Array>; end: () => Promise<void> }, Refusal>> {
  if (!rules(actor)) return err(notAllowed);
  const client = await connected();
  let done: Manifest | undefined;
  const whenDone = (manifest: Manifest) => {
    done = manifest;
  };
  const end = async () => {
    try {
      if (done) await noteCopy(client, { direction: "out", by: actor.name, manifest: done });
    } finally {
      await client.end();
    }
  };
  return ok({ pieces: takeOut(client, { withSecrets: false, whenDone }), end });
}

/** Fills this empty installation from an archive on disk; whoever does it stays its administrator. */
export async function takeInWhole(actor: Actor, path: string): Promise<Result<{ rows: number }, Refusal>> {
  if (!rules(actor)) return err(notAllowed);
  const client = await connected();
  try {
    const { tables } = await takeIn(client, { path, person: actor });
    return ok({ rows: tables.reduce((sum, { rows }) => sum + rows, 0) });
  } catch (error) {
    if (error instanceof ArchiveRefusal) return err({ code: "impossible", reason: error.message });
    throw error;
  } finally {
    await client.end();
  }
}

/** A connection of its own: a copy holds it from its first row to its last. */
async function connected(): Promise<Client> {
  const client = new Client({ connectionString: databaseUrl() });
  // Without a listener a connection lost later ends the process; the query in flight reports it.
  client.on("error", () => undefined);
  await client.connect();
  return client;
}
