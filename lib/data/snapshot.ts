import "server-only";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import { scopeOf } from "@/lib/access/policy";
import { fixedDay } from "@/lib/data/asOf";
import { database } from "@/lib/data/client";
import { groupZone } from "@/lib/data/group/groupZone";
import { type TakenSnapshot, takeSnapshot } from "@/lib/data/group/takeSnapshot";
import type { IsoDate } from "@/lib/kernel/isoDate";
import { err, ok, type Result } from "@/lib/kernel/result";
import { ENGINE } from "@/lib/risk/evaluate";
import type { SnapshotMark } from "@/lib/view/moved";
import { nextWeeklyDay, type WeeklyRule } from "@/lib/view/weekly";

const MOST_LISTED = 120;

/** The snapshots that can be compared, the latest day first. Those of an earlier engine stay stored and unlisted. */
export async function listSnapshots(_actor: Actor): Promise<SnapshotMark[]> {
  const rows = await database().snapshot.findMany({
    where: { engine: ENGINE },
    orderBy: { asOf: "desc" },
    take: MOST_LISTED,
    select: { id: true, asOf: true, takenAt: true, takenBy: true },
  });
  return rows.map(({ id, asOf, takenAt, takenBy }) => ({
    id,
    asOf: asOf.toISOString().slice(0, 10),
    takenAt: takenAt.toISOString(),
    takenBy,
  }));
}

/** When this installation takes its snapshots by itself. */
export async function readWeeklyRule(_actor: Actor): Promise<WeeklyRule> {
  const zone = await groupZone();
  const standsAt = await fixedDay(database());
  return { zone, standsAt, next: nextWeeklyDay(new Date().toISOString(), zone) };
}

/** Takes the snapshot of a day for somebody who plans at all sites: it holds every site's data. */
export async function takeSnapshotNow(
  actor: Actor,
  { asOf }: { readonly asOf: IsoDate },
): Promise<Result<TakenSnapshot, Refusal>> {
  if (scopeOf(actor.grants, "plan:write") !== "all")
    return err({
      code: "forbidden",
      reason: "A snapshot holds all sites, so only somebody who plans at all of them may take it.",
    });
  return ok(await takeSnapshot(asOf, { userId: actor.userId, name: actor.name }));
}
