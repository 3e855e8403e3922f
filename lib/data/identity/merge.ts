import "server-only";
import type { Refusal } from "@/lib/access/action";
import type { Transaction } from "@/lib/data/change";
import { foldLots, foldRemovals, refuseSharedSerials, type TwoParts } from "@/lib/data/identity/foldRows";
import { FILLED_FIELDS, type MergeSteps } from "@/lib/data/identity/mergeSteps";
import { giveRows, PART_TABLES, partRows } from "@/lib/data/identity/partRows";
import { findSuccessorLoops } from "@/lib/intake/findSuccessorLoops";
import { err, ok, type Result } from "@/lib/kernel/result";
import type { Part, Prisma } from "@/prisma/generated/client";

const gone: Refusal = {
  code: "missing",
  reason: "There are no such two parts to merge, or one was merged meanwhile. Load the page again.",
};
const otherClass: Refusal = {
  code: "invalid",
  reason: "The two are of different classes of items, so they cannot be one part. Correct the class first.",
};
const circle: Refusal = {
  code: "conflict",
  reason: "The part would become its own successor. Take the succession between the two out first.",
};

/**
 * Makes two parts one: every record of the other follows the kept part, its number becomes another number of it, and
 * what the kept part does not know is taken over. The other part stays, set aside.
 */
export async function merge(
  tx: Transaction,
  { keptId, otherId, alias }: TwoParts & { readonly alias: Prisma.PartAliasUncheckedCreateInput },
): Promise<Result<{ kept: Part; other: Part; steps: MergeSteps }, Refusal>> {
  const pair = await holdParts(tx, { keptId, otherId });
  if (!pair.ok) return pair;
  const { kept, other } = pair.value;
  const shared = await refuseSharedSerials(tx, { keptId, otherId });
  if (!shared.ok) return shared;
  const lots = await foldLots(tx, { keptId, otherId });
  if (!lots.ok) return lots;
  const removals = await foldRemovals(tx, { keptId, otherId });
  if (!removals.ok) return removals;
  const successors = await moveSuccessors(tx, { keptId, otherId });
  if (!successors.ok) return successors;
  const moved = await moveRows(tx, { keptId, otherId });
  const filled = await fill(tx, kept, other);
  const aliasId = await keepNumber(tx, alias);
  await tx.part.update({ where: { id: otherId }, data: { mergedIntoId: keptId } });
  const folded = [...lots.value, ...removals.value];
  return ok({ kept, other, steps: { moved, successors: successors.value, folded, filled, aliasId } });
}

/** Both parts, held so that of two people merging them one comes after the other. */
async function holdParts(
  tx: Transaction,
  { keptId, otherId }: TwoParts,
): Promise<Result<{ kept: Part; other: Part }, Refusal>> {
  const ids = [keptId, otherId];
  await tx.$queryRaw`SELECT "id" FROM "Part" WHERE "id" = ANY(${ids}::uuid[]) ORDER BY "id" FOR UPDATE`;
  const rows = await tx.part.findMany({ where: { id: { in: ids }, mergedIntoId: null } });
  const [kept, other] = ids.map((id) => rows.find((row) => row.id === id));
  if (!kept || !other || keptId === otherId) return err(gone);
  return kept.itemClass === other.itemClass ? ok({ kept, other }) : err(otherClass);
}

async function moveRows(tx: Transaction, { keptId, otherId }: TwoParts): Promise<MergeSteps["moved"]> {
  const moved: { table: (typeof PART_TABLES)[number]; ids: string[] }[] = [];
  for (const table of PART_TABLES) {
    const ids = (await partRows[table].of(tx, otherId)).map(({ id }) => id).sort();
    if (ids.length === 0) continue;
    await giveRows(tx, table, { ids, from: otherId, partId: keptId });
    moved.push({ table, ids });
  }
  return moved;
}

/** Steps to and from the other part become the kept one's; those it has already, and one between the two, stay. */
async function moveSuccessors(
  tx: Transaction,
  { keptId, otherId }: TwoParts,
): Promise<Result<MergeSteps["successors"], Refusal>> {
  const all = await tx.successor.findMany({ select: { id: true, partId: true, successorId: true } });
  const known = new Set(all.map(({ partId, successorId }) => `${partId} ${successorId}`));
  const become = (id: string) => (id === otherId ? keptId : id);
  const changed = all.flatMap(({ id, partId, successorId }) => {
    const step = { id, partId: become(partId), successorId: become(successorId) };
    const side = partId === otherId ? ("partId" as const) : ("successorId" as const);
    const isOurs = partId === otherId || successorId === otherId;
    const isNew = !known.has(`${step.partId} ${step.successorId}`) && step.partId !== step.successorId;
    return isOurs && isNew ? [{ ...step, side }] : [];
  });
  const between = all.some(
    ({ partId, successorId }) => become(partId) === become(successorId) && partId !== successorId,
  );
  const after = all.map((step) => {
    const [partId, successorId] = [become(step.partId), become(step.successorId)];
    return { partId, successorId, rowNumber: partId === keptId ? 1 : null };
  });
  if (between || findSuccessorLoops(after).length > 0) return err(circle);
  for (const { id, side } of changed) await tx.successor.update({ where: { id }, data: { [side]: keptId } });
  return ok(changed.map(({ id, side }) => ({ id, side })));
}

async function fill(tx: Transaction, kept: Part, other: Part): Promise<MergeSteps["filled"]> {
  const lacking = FILLED_FIELDS.filter((field) => kept[field] === null && other[field] !== null);
  // A price without its own currency and day would be another price.
  const fields = kept.price === null ? lacking : lacking.filter((field) => !field.startsWith("price"));
  const data = Object.fromEntries(fields.map((field) => [field, other[field]]));
  if (fields.length > 0) await tx.part.update({ where: { id: kept.id }, data });
  return JSON.parse(JSON.stringify(data)) as MergeSteps["filled"];
}

async function keepNumber(
  tx: Transaction,
  alias: Prisma.PartAliasUncheckedCreateInput,
): Promise<string | null> {
  const known = await tx.partAlias.findFirst({ where: { alias: alias.alias, siteId: null } });
  return known ? null : (await tx.partAlias.create({ data: alias, select: { id: true } })).id;
}
