import "server-only";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import { change } from "@/lib/data/change";
import { atSites } from "@/lib/data/scope";
import { err, ok, type Result } from "@/lib/kernel/result";
import type { ChangeLineFigures } from "@/lib/schema/lineFigures";
import { reasonGiven } from "@/lib/schema/why";

const missing: Refusal = { code: "missing", reason: "There is no such line where you may change figures." };
const conflict: Refusal = {
  code: "conflict",
  reason: "Somebody else changed this line since you opened it. Nothing was changed; load the page again.",
};

/**
 * Writes what a stop of a line costs with its owner and dates, its buffer and its shifts.
 *
 * Only when the stored figures are still those the person saw; else nothing is written.
 */
export async function changeLine(
  actor: Actor,
  { lineId, seen, wanted, why }: ChangeLineFigures,
): Promise<Result<null, Refusal>> {
  return change(actor, async (tx, record) => {
    const allowed = { id: lineId, ...atSites(actor, "line:write") };
    const line = await tx.line.findFirst({ where: allowed, select: { siteId: true } });
    if (!line) return err(missing);
    const { count } = await tx.line.updateMany({
      where: { ...allowed, ...columns(seen), costSteps: { equals: seen.costSteps } },
      data: columns(wanted),
    });
    if (count === 0) return err(conflict);
    if (JSON.stringify(seen) === JSON.stringify(wanted)) return ok(null);
    record({
      deed: "line:figures",
      entity: "Line",
      entityId: lineId,
      siteId: line.siteId,
      before: seen,
      after: wanted,
      why: reasonGiven(why),
    });
    return ok(null);
  });
}

function columns(figures: ChangeLineFigures["seen"]) {
  const dateOf = (day: string | null) => (day === null ? null : new Date(`${day}T00:00:00Z`));
  return {
    ...figures,
    costApprovedOn: dateOf(figures.costApprovedOn),
    costValidUntil: dateOf(figures.costValidUntil),
  };
}
