import "server-only";
import type { Refusal } from "@/lib/access/action";
import type { Transaction } from "@/lib/data/change";
import { err, ok, type Result } from "@/lib/kernel/result";
import type { CaptureSteps } from "@/lib/schema/event";

const moved: Refusal = {
  code: "conflict",
  reason: "The unit put in, the piece put away or the repair was changed since. Nothing was taken back.",
};

/** Puts units, stock and repair back as they were before an event; refused once somebody built on it. */
export async function takeBackSteps(tx: Transaction, steps: CaptureSteps): Promise<Result<null, Refusal>> {
  const done = [
    await remove(steps.placed, (id) => tx.placement.deleteMany({ where: { id, untilOn: null } })),
    await remove(steps.unitMade, (id) => tx.unit.deleteMany({ where: { id, placements: { none: {} } } })),
    await remove(steps.ended, (id) => tx.placement.updateMany({ where: { id }, data: { untilOn: null } })),
    await remove(steps.repair, (id) => tx.repairOrder.deleteMany({ where: { id, returnedOn: null } })),
    await remove(steps.taken, (id) =>
      tx.stockLot.updateMany({ where: { id }, data: { quantity: { increment: 1 } } }),
    ),
    await remove(steps.given, (id) =>
      tx.stockLot.updateMany({ where: { id, quantity: { gt: 0 } }, data: { quantity: { decrement: 1 } } }),
    ),
  ];
  return done.every((one) => one) ? ok(null) : err(moved);
}

/** Runs a step on what was made, if anything was; false when it is no longer as it was left. */
async function remove(id: string | null, run: (id: string) => Promise<{ count: number }>): Promise<boolean> {
  return id === null || (await run(id)).count === 1;
}
