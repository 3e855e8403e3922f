import "server-only";
import type { Transaction } from "@/lib/data/change";
import { readNames } from "@/lib/data/intake/readNames";
import { CHANGES_SHOWN, countThings, listChanges, type WrittenThing } from "@/lib/view/importChanges";
import type { LoadedImport } from "@/lib/view/importView";

type Kept = WrittenThing["after"];

/** What a loaded file wrote, from the steps kept for taking it back. */
export async function readLoaded(tx: Transaction, batchId: string): Promise<LoadedImport> {
  const steps = await tx.importChange.findMany({
    where: { batchId },
    orderBy: { sequence: "asc" },
    select: { entity: true, entityId: true, rowNumber: true, before: true, after: true },
  });
  const changed = steps.filter((step) => step.before !== null);
  const names = await readNames(
    tx,
    changed.flatMap(({ entityId, before, after }) => [
      entityId,
      ...textsIn(before as Kept),
      ...textsIn(after as Kept),
    ]),
  );
  const things = steps.map(
    ({ entity, entityId, rowNumber, before, after }): WrittenThing => ({
      entity,
      rowNumber,
      name: names.get(entityId) ?? entityId,
      kind: before === null ? "add" : "change",
      before: before as Kept | null,
      after: after as Kept,
    }),
  );
  const changes = listChanges(things, (id) => names.get(id));
  return {
    things: countThings(things),
    changes: { shown: changes.slice(0, CHANGES_SHOWN), count: changes.length },
  };
}

/** Texts that may be ids; readNames leaves out those that are none. */
function textsIn(values: Kept): string[] {
  return Object.values(values).filter((value) => typeof value === "string");
}
