import "server-only";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import { scopeOf } from "@/lib/access/policy";
import { readAsOf } from "@/lib/data/asOf";
import { change } from "@/lib/data/change";
import { err, ok, type Result } from "@/lib/kernel/result";
import type { SetEffortNorm } from "@/lib/schema/effortNorm";
import { findGap } from "@/lib/view/gap";

const notAll: Refusal = {
  code: "forbidden",
  reason: "The hours hold for every site: only who changes lines at all sites sets them.",
};
const noGap: Refusal = { code: "missing", reason: "There is no such gap. Nothing was changed." };
const moved: Refusal = {
  code: "conflict",
  reason: "Somebody else set these hours meanwhile. Nothing was changed; load the page again to see theirs.",
};

/** Whether a person may set what mending takes. */
export function maySetEffort(actor: Actor): boolean {
  return scopeOf(actor.grants, "line:write") === "all";
}

/** Sets the hours one piece of mending takes, or goes back to common practice, if nobody else did meanwhile. */
export async function setEffort(
  actor: Actor,
  { gap, hours, seen }: SetEffortNorm,
): Promise<Result<{ version: number | null }, Refusal>> {
  if (!maySetEffort(actor)) return err(notAll);
  if (findGap(gap) === null) return err(noGap);
  const changedOn = new Date(`${await readAsOf(actor, undefined)}T00:00:00Z`);
  return change(actor, async (tx, record) => {
    await tx.$executeRaw`LOCK TABLE "EffortNorm" IN SHARE ROW EXCLUSIVE MODE`;
    const before = await tx.effortNorm.findUnique({ where: { gap } });
    if ((before?.version ?? null) !== seen) return err(moved);
    const version = (before?.version ?? 0) + 1;
    if (hours === null) await tx.effortNorm.deleteMany({ where: { gap } });
    else {
      const set = { hours, changedOn, changedBy: actor.name, version };
      await tx.effortNorm.upsert({ where: { gap }, create: { gap, ...set }, update: set });
    }
    record({
      ...{ deed: "effort:set", entity: "EffortNorm", entityId: gap },
      ...{ before: { hours: before?.hours.toNumber() ?? null }, after: { hours } },
    });
    return ok({ version: hours === null ? null : version });
  });
}
