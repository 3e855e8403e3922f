import "server-only";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import { readAsOf } from "@/lib/data/asOf";
import { change } from "@/lib/data/change";
import { atSites } from "@/lib/data/scope";
import { err, ok, type Result } from "@/lib/kernel/result";
import type { RestoreMachine, RetireMachine } from "@/lib/schema/sighting";

const missing: Refusal = { code: "missing", reason: "There is no such machine at a site you may change." };
const moved: Refusal = {
  code: "conflict",
  reason:
    "Somebody else changed whether this machine is in service. Nothing was changed; load the page again.",
};

/** Takes a machine out of service from today on: it and all in it count in no figure. Nothing is deleted. */
export async function retireMachine(
  actor: Actor,
  { machineId, reason }: RetireMachine,
): Promise<Result<{ retiredOn: string }, Refusal>> {
  const retiredOn = await readAsOf(actor, undefined);
  const written = await write(actor, machineId, { seen: null, retiredOn, reason });
  return written.ok ? ok({ retiredOn }) : written;
}

/** Puts a machine back into service. */
export function restoreMachine(
  actor: Actor,
  { machineId, seen }: RestoreMachine,
): Promise<Result<null, Refusal>> {
  return write(actor, machineId, { seen, retiredOn: null, reason: "" });
}

interface Retirement {
  /** The day that stood on the page; null is in service. */
  readonly seen: string | null;
  readonly retiredOn: string | null;
  readonly reason: string;
}

function write(
  actor: Actor,
  machineId: string,
  { seen, retiredOn, reason }: Retirement,
): Promise<Result<null, Refusal>> {
  return change(actor, async (tx, record) => {
    const where = { id: machineId, line: atSites(actor, "line:write") };
    const machine = await tx.machine.findFirst({ where, include: { line: { select: { siteId: true } } } });
    if (!machine) return err(missing);
    const { count } = await tx.machine.updateMany({
      where: { id: machineId, retiredOn: seen === null ? null : new Date(`${seen}T00:00:00Z`) },
      data: {
        retiredOn: retiredOn === null ? null : new Date(`${retiredOn}T00:00:00Z`),
        retiredReason: reason,
      },
    });
    if (count === 0) return err(moved);
    record({
      ...{
        deed: retiredOn === null ? "machine:restore" : "machine:retire",
        entity: "Machine",
        entityId: machineId,
      },
      siteId: machine.line.siteId,
      before: { retiredOn: seen, retiredReason: machine.retiredReason },
      after: { retiredOn, retiredReason: reason },
    });
    return ok(null);
  });
}
