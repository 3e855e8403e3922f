import "server-only";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import { scopeOf } from "@/lib/access/policy";
import { change } from "@/lib/data/change";
import { atSites, sites } from "@/lib/data/scope";
import { err, ok, type Result } from "@/lib/kernel/result";
import type {
  AddPrecedence,
  RemoveFreeze,
  RemovePrecedence,
  RemoveWindow,
  SaveFreeze,
  SaveWindow,
} from "@/lib/schema/planInputs";

const missing = (what: string): Refusal => ({
  code: "missing",
  reason: `There is no such ${what} that you may change.`,
});
const conflict = (what: string): Refusal => ({
  code: "conflict",
  reason: `Somebody else changed this ${what} since you opened it. Nothing was changed; load the page again.`,
});

const dateOf = (day: string) => new Date(`${day}T00:00:00Z`);

/** Adds a shutdown window, or writes one anew. */
export async function saveWindow(actor: Actor, wanted: SaveWindow): Promise<Result<null, Refusal>> {
  const { windowId, version, usableHours, note, startsOn, endsOn, ...rest } = wanted;
  const data = {
    ...{ ...rest, usableHours, note: note === "" ? null : note },
    ...{ startsOn: dateOf(startsOn), endsOn: dateOf(endsOn) },
  };
  const most = 24 * ((data.endsOn.getTime() - data.startsOn.getTime()) / 86_400_000 + 1);
  if (usableHours !== null && Number(usableHours) > most)
    return err({
      code: "invalid",
      reason: "A window has no more usable hours than its days have.",
      fields: { usableHours: `At most ${most} hours from the first to the last day.` },
    });
  return change(actor, async (tx, record) => {
    const place = await tx.site.count({
      where: { AND: [{ id: wanted.siteId }, sites(actor, "plan:write")] },
    });
    if (place === 0) return err(missing("site"));
    const seen = { deed: "window:save", entity: "ShutdownWindow", siteId: wanted.siteId, after: wanted };
    if (windowId === null) {
      const { id } = await tx.shutdownWindow.create({ data });
      record({ ...seen, entityId: id });
      return ok(null);
    }
    const before = await tx.shutdownWindow.findFirst({
      where: { id: windowId, ...atSites(actor, "plan:write") },
    });
    if (!before) return err(missing("window"));
    const { count } = await tx.shutdownWindow.updateMany({
      where: { id: windowId, version: version ?? 0 },
      data: { ...data, version: { increment: 1 } },
    });
    if (count === 0) return err(conflict("window"));
    record({
      ...seen,
      entityId: windowId,
      before: { ...before, usableHours: before.usableHours?.toFixed() ?? null } as object,
    });
    return ok(null);
  });
}

export async function removeWindow(
  actor: Actor,
  { windowId, version }: RemoveWindow,
): Promise<Result<null, Refusal>> {
  return change(actor, async (tx, record) => {
    const stored = await tx.shutdownWindow.findFirst({
      where: { id: windowId, ...atSites(actor, "plan:write") },
    });
    if (!stored) return err(missing("window"));
    const { count } = await tx.shutdownWindow.deleteMany({ where: { id: windowId, version } });
    if (count === 0) return err(conflict("window"));
    const { name, siteId } = stored;
    record({ deed: "window:remove", entity: "ShutdownWindow", entityId: windowId, siteId, before: { name } });
    return ok(null);
  });
}

/** Adds a day after which no request is taken, or writes one anew; it holds for the group. */
export async function saveFreeze(actor: Actor, wanted: SaveFreeze): Promise<Result<null, Refusal>> {
  if (scopeOf(actor.grants, "plan:write") !== "all") return err(missing("freeze"));
  const { freezeId, version, freezesOn, coversFrom, coversTo, ...rest } = wanted;
  const data = {
    ...rest,
    ...{ freezesOn: dateOf(freezesOn), coversFrom: dateOf(coversFrom), coversTo: dateOf(coversTo) },
  };
  return change(actor, async (tx, record) => {
    const seen = { deed: "freeze:save", entity: "ApprovalFreeze", after: wanted };
    if (freezeId === null) {
      const { id } = await tx.approvalFreeze.create({ data });
      record({ ...seen, entityId: id });
      return ok(null);
    }
    const { count } = await tx.approvalFreeze.updateMany({
      where: { id: freezeId, version: version ?? 0 },
      data: { ...data, version: { increment: 1 } },
    });
    if (count === 0) return err(conflict("freeze"));
    record({ ...seen, entityId: freezeId });
    return ok(null);
  });
}

export async function removeFreeze(
  actor: Actor,
  { freezeId, version }: RemoveFreeze,
): Promise<Result<null, Refusal>> {
  if (scopeOf(actor.grants, "plan:write") !== "all") return err(missing("freeze"));
  return change(actor, async (tx, record) => {
    const { count } = await tx.approvalFreeze.deleteMany({ where: { id: freezeId, version } });
    if (count === 0) return err(conflict("freeze"));
    record({ deed: "freeze:remove", entity: "ApprovalFreeze", entityId: freezeId });
    return ok(null);
  });
}

/** Lets one line wait for another. */
export async function addPrecedence(actor: Actor, wanted: AddPrecedence): Promise<Result<null, Refusal>> {
  const { firstId, thenId } = wanted;
  return change(actor, async (tx, record) => {
    const lines = await tx.line.findMany({
      where: { id: { in: [firstId, thenId] }, ...atSites(actor, "plan:write") },
      select: { id: true },
    });
    if (lines.length < 2) return err(missing("line"));
    if ((await tx.planPrecedence.count({ where: { firstId: thenId, thenId: firstId } })) > 0)
      return err({ code: "impossible", reason: "The two lines would wait for each other." });
    if ((await tx.planPrecedence.count({ where: { firstId, thenId } })) > 0) return err(conflict("order"));
    const { id } = await tx.planPrecedence.create({ data: wanted });
    record({ deed: "precedence:add", entity: "PlanPrecedence", entityId: id, after: wanted });
    return ok(null);
  });
}

export async function removePrecedence(
  actor: Actor,
  { precedenceId, version }: RemovePrecedence,
): Promise<Result<null, Refusal>> {
  const own = atSites(actor, "plan:write");
  return change(actor, async (tx, record) => {
    const where = { id: precedenceId, first: own, following: own };
    if ((await tx.planPrecedence.count({ where })) === 0) return err(missing("order"));
    const { count } = await tx.planPrecedence.deleteMany({ where: { ...where, version } });
    if (count === 0) return err(conflict("order"));
    record({ deed: "precedence:remove", entity: "PlanPrecedence", entityId: precedenceId });
    return ok(null);
  });
}
