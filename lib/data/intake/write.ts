import "server-only";
import { randomUUID } from "node:crypto";
import type { Transaction } from "@/lib/data/change";
import type { Resolved } from "@/lib/data/intake/resolve";
import { insertRows, updateRow } from "@/lib/data/intake/writers";
import { ENTITIES } from "@/lib/intake/intents/intent";
import type { IsoDate } from "@/lib/kernel/isoDate";
import type { Prisma } from "@/prisma/generated/client";

/** Writes what a file adds and changes, parents first, and keeps each step so that it can be taken back. */
export async function write(
  tx: Transaction,
  resolved: readonly Resolved[],
  { batchId, day }: { readonly batchId: string; readonly day: IsoDate },
): Promise<readonly Resolved[]> {
  const steps = ENTITIES.flatMap((entity) =>
    ordered(
      resolved.filter((one) => one.entity === entity),
      day,
    ),
  );
  for (const entity of ENTITIES) {
    const own = steps.filter((step) => step.entity === entity);
    for (const step of own) if (step.kind === "change") await updateRow(tx, step, step.after);
    await insertRows(
      tx,
      entity,
      own.filter((step) => step.kind === "add").map((step) => step.after),
    );
  }
  await tx.importChange.createMany({
    data: steps.map(({ entity, id, rowNumber, before, after }, sequence) => ({
      batchId,
      sequence,
      rowNumber,
      entity,
      entityId: id,
      after: after as Prisma.InputJsonObject,
      ...(before === null ? {} : { before: before as Prisma.InputJsonObject }),
    })),
  });
  return steps;
}

/** A change of unit in a place is the end of one stay and the start of another, the ends written first. */
function ordered(own: readonly Resolved[], day: IsoDate): Resolved[] {
  const steps = own
    .filter((one) => one.kind !== "same")
    .flatMap((one) => (isSwap(one) ? swap(one, day) : [one]));
  return [...steps.filter((one) => one.kind === "change"), ...steps.filter((one) => one.kind === "add")];
}

function isSwap({ entity, kind, after }: Resolved): boolean {
  return entity === "Placement" && kind === "change" && "unitId" in after;
}

function swap(one: Resolved, day: IsoDate): Resolved[] {
  const id = randomUUID();
  return [
    { ...one, before: { untilOn: null }, after: { untilOn: day } },
    {
      ...one,
      id,
      kind: "add",
      before: null,
      after: {
        id,
        unitId: one.after.unitId ?? null,
        positionId: one.parents.positionId ?? null,
        fromOn: day,
      },
    },
  ];
}
