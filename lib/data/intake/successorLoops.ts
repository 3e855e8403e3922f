import "server-only";
import type { Transaction } from "@/lib/data/change";
import type { Resolved, Unsettled } from "@/lib/data/intake/resolve";
import { findSuccessorLoops } from "@/lib/intake/findSuccessorLoops";

/** Rows that would make a part its own successor, with the parts on the way round. */
export async function findLoopsOfSuccessors(
  tx: Transaction,
  resolved: readonly Resolved[],
): Promise<Unsettled[]> {
  const rows = resolved.filter(({ entity, kind }) => entity === "Successor" && kind === "add");
  if (rows.length === 0) return [];
  const stored = await tx.successor.findMany({ select: { partId: true, successorId: true } });
  const loops = findSuccessorLoops([
    ...stored.map((step) => ({ ...step, rowNumber: null })),
    ...rows.map(({ parents, rowNumber }) => ({
      partId: parents.partId ?? "",
      successorId: parents.successorId ?? "",
      rowNumber,
    })),
  ]);
  const numbers = await numbersOf(
    tx,
    resolved,
    loops.flatMap(({ partIds }) => partIds),
  );
  return loops.map(({ rowNumber, partIds }) => ({
    rowNumber,
    field: "successor",
    problem: `The part would follow itself: ${partIds.map((id) => numbers.get(id) ?? "a part").join(" → ")}`,
    remedy: "Correct the successor; a chain of successors must end",
  }));
}

async function numbersOf(tx: Transaction, resolved: readonly Resolved[], ids: readonly string[]) {
  const stored = await tx.part.findMany({
    where: { id: { in: [...ids] } },
    select: { id: true, number: true },
  });
  return new Map([
    ...resolved.flatMap(({ entity, id, after }) =>
      entity === "Part" && typeof after.number === "string" ? [[id, after.number] as const] : [],
    ),
    ...stored.map(({ id, number }) => [id, number] as const),
  ]);
}
