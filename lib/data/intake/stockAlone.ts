import "server-only";
import type { Deeded, Transaction } from "@/lib/data/change";
import type { Resolved } from "@/lib/data/intake/resolve";

/** The parts whose stock a file touched, when it touched nothing else. */
export async function stockAlone(
  tx: Transaction,
  steps: readonly Pick<Resolved, "entity" | "id">[],
): Promise<Pick<Deeded, "stockOf">> {
  if (!steps.every(({ entity }) => entity === "StockLot")) return {};
  const lots = await tx.stockLot.findMany({
    where: { id: { in: steps.map(({ id }) => id) } },
    select: { partId: true },
  });
  return { stockOf: lots.map(({ partId }) => partId) };
}
