import "server-only";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { assumptionsInUse } from "@/lib/data/group/assumptionsInUse";
import { loadGroupInput } from "@/lib/data/group/loadGroupInput";
import { resultHash, thaw } from "@/lib/data/group/snapshotBytes";
import { readMovedNames } from "@/lib/data/movedNames";
import { siteIds } from "@/lib/data/scope";
import type { IsoDate } from "@/lib/kernel/isoDate";
import { ENGINE } from "@/lib/risk/evaluate";
import { changedInputs } from "@/lib/risk/moved/changedInputs";
import { seenFrom } from "@/lib/risk/moved/seenFrom";
import type { SnapshotInput } from "@/lib/risk/moved/snapshotInput";
import { type MovedLine, sumMoved, whatMoved } from "@/lib/risk/whatMoved";
import { type MovedLook, NOW, type SnapshotMark } from "@/lib/view/moved";
import { movedWords } from "@/lib/view/movedWords";

interface Ends {
  /** Id of a snapshot. */
  readonly from: string;
  /** Id of a snapshot, or `now`: the data as they stand on the day looked at. */
  readonly to: string;
  readonly asOf: IsoDate;
}

interface Opened {
  readonly mark: SnapshotMark;
  readonly snapshot: SnapshotInput;
  /** Null where nothing is stored to hold the result against. */
  readonly hash: string | null;
}

const FROZEN_MOST = 8;
const compared = new Map<string, ReturnType<typeof whatMoved>>();

/**
 * What moved between two snapshots, for the lines the actor may see; null when one of them is not there.
 *
 * The inputs behind the steps are told without naming other sites: their lines not at all, their stock and events as
 * sums.
 */
export async function readMoved(actor: Actor, { from, to, asOf }: Ends): Promise<MovedLook | null> {
  const [first, last] = await Promise.all([openStored(from), to === NOW ? openNow(asOf) : openStored(to)]);
  if (!first || !last) return null;
  const pair = [first.snapshot, last.snapshot] as const;
  const moved = to === NOW ? whatMoved(...pair) : comparedOnce(`${from} ${to}`, pair);
  const allowed = siteIds(actor, "read")?.in;
  const lines = allowed ? moved.lines.filter(isAt(new Set(allowed), pair)) : moved.lines;
  const shown = allowed ? seenFrom(new Set(allowed), pair) : pair;
  const changed = changedInputs(...shown);
  const ends = [
    { opened: first, result: moved.results.before },
    { opened: last, result: moved.results.after },
  ];
  return {
    from: first.mark,
    to: last.mark,
    lines,
    total: sumMoved(lines),
    isWholeGroup: lines.length === moved.lines.length,
    inputs: movedWords(changed, await readMovedNames(actor, changed)),
    isSound: ends.every(({ opened, result }) => opened.hash === null || opened.hash === resultHash(result)),
    engine: ENGINE,
  };
}

/** Two snapshots never change, so what moved between them is computed once in a process for the last few pairs. */
function comparedOnce(key: string, pair: readonly [SnapshotInput, SnapshotInput]) {
  const moved = compared.get(key) ?? whatMoved(...pair);
  compared.delete(key);
  compared.set(key, moved);
  const [oldest] = compared.keys();
  if (compared.size > FROZEN_MOST && oldest !== undefined) compared.delete(oldest);
  return moved;
}

async function openStored(id: string): Promise<Opened | null> {
  if (!/^[0-9a-f-]{36}$/.test(id)) return null;
  const row = await database().snapshot.findFirst({ where: { id, engine: ENGINE } });
  if (!row) return null;
  const { asOf, takenAt, takenBy } = row;
  return {
    mark: { id, asOf: asOf.toISOString().slice(0, 10), takenAt: takenAt.toISOString(), takenBy },
    snapshot: thaw(row),
    hash: row.resultHash,
  };
}

async function openNow(asOf: IsoDate): Promise<Opened> {
  const snapshot = await database().$transaction(
    async (tx) => ({
      input: await loadGroupInput(tx, asOf),
      assumptions: (await assumptionsInUse(tx)).values,
    }),
    { isolationLevel: "RepeatableRead", timeout: 60_000 },
  );
  return {
    mark: { id: NOW, asOf, takenAt: null, takenBy: null },
    snapshot,
    hash: null,
  };
}

/** Only lines that were and are at sites the actor may read. */
function isAt(allowed: ReadonlySet<string>, pair: readonly SnapshotInput[]) {
  const foreign = new Set(
    pair.flatMap(({ input }) => input.lines.filter(({ siteId }) => !allowed.has(siteId)).map(({ id }) => id)),
  );
  return ({ lineId }: MovedLine) => !foreign.has(lineId);
}
