import "server-only";
import type { Actor } from "@/lib/access/actor";
import { maySomewhere, scopeOf } from "@/lib/access/policy";
import { database } from "@/lib/data/client";
import { ASSUMPTION_SETTING, assumptionsInUse, storedAssumptions } from "@/lib/data/group/assumptionsInUse";
import type { IsoDate } from "@/lib/kernel/isoDate";
import { type AssumptionChoice, assumptionChoice } from "@/lib/schema/assumptions";
import {
  type AssumptionRow,
  assumptionRows,
  type KeptVersion,
  latestOwn,
  type VersionRow,
  versionRows,
} from "@/lib/view/assumptionTable";

/** When which version was taken into use, and by whom. */
export interface AssumptionUse extends AssumptionChoice {
  readonly id: string;
  readonly on: IsoDate;
  readonly by: string;
}

/** Every assumption, the versions written down, and which of them was in use when. */
export interface AssumptionOverview {
  readonly inUse: AssumptionChoice;
  /** Newest version of the own set; 0 when there is none. */
  readonly ownVersion: number;
  readonly rows: readonly AssumptionRow[];
  readonly versions: readonly VersionRow[];
  readonly uses: readonly AssumptionUse[];
  /** Whether the person may state values and choose the set: it holds for all sites. */
  readonly mayChange: boolean;
}

/** The assumptions of the group; null for who may read nowhere. */
export async function readAssumptionOverview(actor: Actor): Promise<AssumptionOverview | null> {
  if (!maySomewhere(actor.grants, "read")) return null;
  const [inUse, kept, uses] = await Promise.all([
    assumptionsInUse(database()),
    readKeptVersions(actor),
    readUses(actor),
  ]);
  const sets = { inUse, kept };
  return {
    inUse: { kind: inUse.kind, version: inUse.version },
    ownVersion: latestOwn(kept)?.version ?? 0,
    rows: assumptionRows(sets),
    versions: versionRows(kept),
    uses,
    mayChange: mayStateAssumptions(actor),
  };
}

/** Whether the person may state values and choose the set in use: planning at all sites, because it moves all of them. */
export function mayStateAssumptions(actor: Actor): boolean {
  return scopeOf(actor.grants, "plan:write") === "all";
}

/** Every version written down with its values; none for who may read nowhere. */
export async function readKeptVersions(actor: Actor): Promise<KeptVersion[]> {
  if (!maySomewhere(actor.grants, "read")) return [];
  const rows = await database().assumptionSet.findMany({ orderBy: [{ changedAt: "asc" }] });
  return rows.map(({ kind, version, values, note, owner, changedAt, changedBy }) => ({
    ...{ kind, version, note, owner, changedBy },
    values: storedAssumptions(values),
    changedOn: dayOf(changedAt),
  }));
}

async function readUses(actor: Actor): Promise<AssumptionUse[]> {
  if (!maySomewhere(actor.grants, "read")) return [];
  const entries = await database().auditEntry.findMany({
    where: { entity: "Setting", entityId: ASSUMPTION_SETTING },
    orderBy: { at: "desc" },
    select: { id: true, at: true, after: true, user: { select: { name: true } } },
    take: 50,
  });
  return entries.map(({ id, at, after, user }) => ({
    ...assumptionChoice.parse(after),
    ...{ id, on: dayOf(at), by: user?.name ?? "the installation" },
  }));
}

function dayOf(date: Date): IsoDate {
  return date.toISOString().slice(0, 10);
}
