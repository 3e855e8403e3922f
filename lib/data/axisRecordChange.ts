import "server-only";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import type { Deed } from "@/lib/access/policy";
import { readAsOf } from "@/lib/data/asOf";
import { followRecord } from "@/lib/data/axisStepRecord";
import { change, type Transaction } from "@/lib/data/change";
import { projects } from "@/lib/data/scope";
import { err, ok, type Result } from "@/lib/kernel/result";
import { axisChecks } from "@/lib/retrofit/axisChecks";
import { judgeAxis } from "@/lib/retrofit/judgeAxis";
import type { AcceptAxis, SetAxisEntry } from "@/lib/schema/axisRecord";

const missing: Refusal = {
  code: "missing",
  reason: "There is no such axis in a project where you may write its record.",
};
const noCheck: Refusal = { code: "missing", reason: "There is no such check." };
const locked: Refusal = {
  code: "impossible",
  reason: "The axis is accepted. Take the acceptance back before anything in its record is changed.",
};
const conflict: Refusal = {
  code: "conflict",
  reason:
    "Somebody else wrote this check meanwhile. What you typed is kept on this device: choose which is to stand.",
};

/** Writes one check of an axis's record, if nobody else did since the person saw it. */
export async function setAxisEntry(
  actor: Actor,
  { projectId, axisId, checkId, version, entry }: SetAxisEntry,
): Promise<Result<{ version: number }, Refusal>> {
  if (!axisChecks.some(({ id }) => id === checkId)) return err(noCheck);
  return change(actor, async (tx, record) => {
    const siteId = await siteOf(tx, actor, { deed: "event:write", projectId, axisId });
    if (siteId === null) return err(missing);
    const held = await holdRecord(tx, projectId, axisId);
    if (held.acceptedOn !== null) return err(locked);
    const at = { recordId: held.id, checkId };
    const before = await tx.axisEntry.findUnique({ where: { recordId_checkId: at } });
    if ((before?.version ?? 0) !== version) return err(conflict);
    const data = { ...entry, on: entry.on === null ? null : new Date(`${entry.on}T00:00:00Z`) };
    const after = await tx.axisEntry.upsert({
      where: { recordId_checkId: at },
      create: { ...at, ...data },
      update: { ...data, version: { increment: 1 } },
    });
    await followRecord(tx, held);
    record({
      ...{ deed: "axis:record", entity: "AxisEntry", entityId: after.id, siteId },
      ...{ before: before ? { ...before, on: before.on?.toISOString() ?? null } : {}, after: { ...entry } },
    });
    return ok({ version: after.version });
  });
}

/** Accepts an axis when every check is passed or does not apply, or takes the acceptance back. */
export async function acceptAxis(
  actor: Actor,
  { projectId, axisId, accepted }: AcceptAxis,
): Promise<Result<null, Refusal>> {
  return change(actor, async (tx, record) => {
    const siteId = await siteOf(tx, actor, { deed: "project:write", projectId, axisId });
    if (siteId === null) return err(missing);
    const held = await holdRecord(tx, projectId, axisId);
    const entries = await tx.axisEntry.findMany({ where: { recordId: held.id } });
    const { hindrances } = judgeAxis(
      Object.fromEntries(
        entries.map((entry) => [
          entry.checkId,
          { ...entry, on: entry.on?.toISOString().slice(0, 10) ?? null },
        ]),
      ),
    );
    if (accepted && hindrances.length > 0) return err(refusalOf(hindrances));
    const today = new Date(`${await readAsOf(actor, undefined)}T00:00:00Z`);
    const sign = accepted
      ? { acceptedOn: today, acceptedBy: actor.name }
      : { acceptedOn: null, acceptedBy: null };
    await tx.axisRecord.update({ where: { id: held.id }, data: sign });
    await followRecord(tx, held);
    record({
      ...{ deed: accepted ? "axis:accept" : "axis:reopen", entity: "AxisRecord", entityId: held.id, siteId },
      ...{ before: { acceptedBy: held.acceptedBy }, after: { acceptedBy: sign.acceptedBy } },
    });
    return ok(null);
  });
}

function refusalOf(hindrances: readonly string[]): Refusal {
  const checks = hindrances.length === 1 ? "1 check is" : `${hindrances.length} checks are`;
  return { code: "impossible", reason: `${checks} not passed. First: ${hindrances[0]}` };
}

interface Wanted {
  readonly deed: Deed;
  readonly projectId: string;
  readonly axisId: string;
}

/** Site of the project when the axis stands on its line and the person may do the deed there. */
async function siteOf(
  tx: Transaction,
  actor: Actor,
  { deed, projectId, axisId }: Wanted,
): Promise<string | null> {
  const project = await tx.project.findFirst({
    where: {
      id: projectId,
      ...projects(actor, deed),
      line: { machines: { some: { axes: { some: { id: axisId } } } } },
    },
    select: { siteId: true },
  });
  return project?.siteId ?? null;
}

/** The record, made when there is none, held so that entries and acceptance come one after the other. */
async function holdRecord(tx: Transaction, projectId: string, axisId: string) {
  await tx.axisRecord.createMany({ data: [{ projectId, axisId }], skipDuplicates: true });
  const at = { projectId_axisId: { projectId, axisId } };
  const { id } = await tx.axisRecord.findUniqueOrThrow({ where: at, select: { id: true } });
  await tx.$queryRaw`SELECT "id" FROM "AxisRecord" WHERE "id" = ${id}::uuid FOR UPDATE`;
  return tx.axisRecord.findUniqueOrThrow({ where: at });
}
