import "server-only";
import type { Refusal } from "@/lib/access/action";
import type { Transaction } from "@/lib/data/change";
import { FILLED_FIELDS, type Folded, type MergeSteps } from "@/lib/data/identity/mergeSteps";
import { giveRows, partRows } from "@/lib/data/identity/partRows";
import { readNames } from "@/lib/data/intake/readNames";
import { err, ok, type Result } from "@/lib/kernel/result";
import { thingWord } from "@/lib/view/importWords";
import { count } from "@/lib/view/number";
import type { PartMerge } from "@/prisma/generated/client";

const builtOn: Refusal = {
  code: "conflict",
  reason:
    "The part that counts was merged into another one since. Take that back first; nothing was changed.",
};

/**
 * Takes a merge back: what moved goes back, what was put together is parted, what was taken over goes.
 *
 * @returns In words, what was touched since and so stays where it is.
 */
export async function unmerge(
  tx: Transaction,
  { keptId, otherId, steps: kept }: Pick<PartMerge, "keptId" | "otherId" | "steps">,
): Promise<Result<string[], Refusal>> {
  const steps = kept as unknown as MergeSteps;
  const parts = { from: keptId, partId: otherId };
  const into = await tx.part.findUniqueOrThrow({ where: { id: keptId } });
  if (into.mergedIntoId !== null) return err(builtOn);
  const stayed: string[] = [];
  if (steps.aliasId !== null) await tx.partAlias.deleteMany({ where: { id: steps.aliasId, partId: keptId } });
  for (const { table, ids } of steps.moved) {
    const back = await giveRows(tx, table, { ids, ...parts });
    if (back < ids.length) stayed.push(await sayStayed(tx, { table, ids, otherId }));
  }
  for (const { id, side } of steps.successors) {
    const { count: back } = await tx.successor.updateMany({
      where: { id, [side]: keptId },
      data: { [side]: otherId },
    });
    if (back === 0) stayed.push("a successor that was taken out since");
  }
  for (const one of steps.folded) if (!(await unfold(tx, one))) stayed.push(await sayFolded(tx, one));
  await takeFilledBack(tx, into, steps.filled);
  await tx.part.update({ where: { id: otherId }, data: { mergedIntoId: null } });
  return ok(stayed);
}

/** What of the moved rows did not go back: those that stand elsewhere by name, those that are gone by their number. */
async function sayStayed(
  tx: Transaction,
  { table, ids, otherId }: MergeSteps["moved"][number] & { readonly otherId: string },
): Promise<string> {
  const back = new Set((await partRows[table].of(tx, otherId)).map(({ id }) => id));
  const missing = ids.filter((id) => !back.has(id));
  const named = [...(await readNames(tx, missing)).values()].sort();
  const names = named.length === 0 ? "" : `: ${named.slice(0, 5).join(", ")}${named.length > 5 ? ", …" : ""}`;
  return `${count(missing.length, thingWord(table, false))} changed or removed since${names}`;
}

/** Parts what was put together, unless it was changed since. */
async function unfold(tx: Transaction, { table, keptId, before, after, gone }: Folded): Promise<boolean> {
  if (table === "StockLot") {
    const where = { id: keptId, quantity: after };
    const { count: back } = await tx.stockLot.updateMany({ where, data: { quantity: before } });
    if (back === 0) return false;
    await tx.$executeRaw`INSERT INTO "StockLot"
      SELECT * FROM jsonb_populate_record(NULL::"StockLot", ${JSON.stringify(gone)}::jsonb)`;
    return true;
  }
  const where = { id: keptId, units: after ?? 0 };
  const { count: back } = await tx.plannedRemoval.updateMany({ where, data: { units: before ?? 0 } });
  if (back === 0) return false;
  await tx.$executeRaw`INSERT INTO "PlannedRemoval"
    SELECT * FROM jsonb_populate_record(NULL::"PlannedRemoval", ${JSON.stringify(gone)}::jsonb)`;
  return true;
}

async function sayFolded(tx: Transaction, { table, keptId, gone }: Folded): Promise<string> {
  if (table === "PlannedRemoval")
    return `${Number(gone.units)} units of a planned removal, which was changed since`;
  const name = (await readNames(tx, [keptId])).get(keptId) ?? `bin ${String(gone.bin)}`;
  return `the pieces of ${name}, which were changed since`;
}

async function takeFilledBack(
  tx: Transaction,
  part: Readonly<Record<string, unknown>> & { readonly id: string },
  filled: MergeSteps["filled"],
): Promise<void> {
  const still = FILLED_FIELDS.filter(
    (field) => field in filled && JSON.stringify(part[field]) === JSON.stringify(filled[field]),
  );
  if (still.length === 0) return;
  await tx.part.update({
    where: { id: part.id },
    data: Object.fromEntries(still.map((field) => [field, null])),
  });
}
