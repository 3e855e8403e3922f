import "server-only";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import { scopeOf } from "@/lib/access/policy";
import { readAsOf } from "@/lib/data/asOf";
import { change, type Transaction } from "@/lib/data/change";
import { atSites, sites } from "@/lib/data/scope";
import { err, ok, type Result } from "@/lib/kernel/result";
import { isShare, type StateFigure, type WithdrawFigure } from "@/lib/schema/planInputs";
import type { PlanFigure, Prisma } from "@/prisma/generated/client";

const missing: Refusal = { code: "missing", reason: "There is no such figure that you may state." };

/** Which figure was written, and its version, to take it back with. */
export interface FigureMark {
  readonly figureId: string;
  readonly version: number;
}

/** States a figure, or states it anew, if nobody else did since the person looked. */
export async function stateFigure(actor: Actor, wanted: StateFigure): Promise<Result<FigureMark, Refusal>> {
  const today = await readAsOf(actor, undefined);
  return change(actor, async (tx, record) => {
    if (!(await mayState(tx, actor, wanted))) return err(missing);
    const { version: seen, value: typed, ...rest } = wanted;
    const { kind, siteId, regionId, obligationId, year } = rest;
    const stored = await tx.planFigure.findFirst({ where: { kind, siteId, regionId, obligationId, year } });
    if ((stored?.version ?? null) !== seen) return err(conflictWith(stored));
    const value = (isShare(kind) ? Number(typed) / 100 : Number(typed)).toFixed(4);
    const data = { ...rest, value, statedOn: new Date(`${today}T00:00:00Z`) };
    const kept = await keep(tx, stored, data);
    record({
      ...{ deed: "figure:state", entity: "PlanFigure", entityId: kept.id, siteId },
      ...(stored ? { before: saidOf(stored) } : {}),
      after: saidOf(kept),
    });
    return ok({ figureId: kept.id, version: kept.version });
  });
}

function keep(tx: Transaction, stored: PlanFigure | null, data: Prisma.PlanFigureUncheckedCreateInput) {
  if (stored === null) return tx.planFigure.create({ data });
  const where = { id: stored.id, version: stored.version };
  return tx.planFigure.update({ where, data: { ...data, version: { increment: 1 } } });
}

/** Takes a figure back: from then on nobody has stated it. */
export async function withdrawFigure(
  actor: Actor,
  { figureId, version }: WithdrawFigure,
): Promise<Result<null, Refusal>> {
  return change(actor, async (tx, record) => {
    const stored = await tx.planFigure.findUnique({ where: { id: figureId } });
    if (!stored || !(await mayState(tx, actor, stored))) return err(missing);
    const { count } = await tx.planFigure.deleteMany({ where: { id: figureId, version } });
    if (count === 0) return err(conflictWith(stored));
    record({
      ...{ deed: "figure:withdraw", entity: "PlanFigure", entityId: figureId, siteId: stored.siteId },
      before: saidOf(stored),
    });
    return ok(null);
  });
}

type Place = Pick<PlanFigure, "siteId" | "regionId" | "obligationId">;

/** Figures of a site or its duty need the deed there; what holds for more needs it everywhere. */
async function mayState(
  tx: Transaction,
  actor: Actor,
  { siteId, regionId, obligationId }: Place,
): Promise<boolean> {
  if (siteId !== null)
    return (await tx.site.count({ where: { AND: [{ id: siteId }, sites(actor, "plan:write")] } })) > 0;
  if (obligationId !== null)
    return (await tx.obligation.count({ where: { id: obligationId, ...atSites(actor, "plan:write") } })) > 0;
  if (scopeOf(actor.grants, "plan:write") !== "all") return false;
  return regionId === null || (await tx.crewRegion.count({ where: { id: regionId } })) > 0;
}

function conflictWith(stored: PlanFigure | null): Refusal {
  const now =
    stored === null
      ? "It was withdrawn."
      : `It is now ${stored.currency ?? ""} ${stored.value} by ${stored.owner}.`;
  return {
    code: "conflict",
    reason: `Somebody else changed this figure since you opened it. ${now} Nothing was changed; what you typed still stands in the form.`,
  };
}

function saidOf({ kind, year, value, currency, source, owner, evidence, statedOn }: PlanFigure) {
  return {
    ...{ kind, year, value: value.toFixed(), currency, source, owner, evidence },
    statedOn: statedOn.toISOString().slice(0, 10),
  };
}
