import "server-only";
import type { Transaction } from "@/lib/data/change";
import type { Resolved, Unsettled } from "@/lib/data/intake/resolve";
import { findNodeFaults, type NetworkNode } from "@/lib/intake/findNodeFaults";

type StoredNode = Omit<NetworkNode, "rowNumber">;

/** Rows that would break a motion network: an address or a place taken twice, a gap in a ring. */
export async function findBrokenNetworks(
  tx: Transaction,
  resolved: readonly Resolved[],
): Promise<Unsettled[]> {
  const rows = resolved.filter(({ entity, kind }) => entity === "Axis" && kind !== "same");
  if (rows.length === 0) return [];
  const stored = await readNodes(
    tx,
    rows.map(({ id }) => id),
    rows.flatMap(({ parents }) => parents.networkId ?? []),
  );
  const names = new Map([
    ...stored.map(({ networkId, network }) => [networkId, network] as const),
    ...resolved.flatMap(({ entity, id, key }) =>
      entity === "Network" ? [[id, readable(key).split(" ").at(-1) ?? key] as const] : [],
    ),
  ]);
  const byId = new Map(stored.map((node) => [node.axisId, node]));
  const nodes = new Map<string, NetworkNode>(
    stored.map((node) => [node.axisId, { ...node, rowNumber: null }]),
  );
  for (const row of resolved) {
    if (row.entity !== "Axis") continue;
    const node = withRow(byId.get(row.id), row, names);
    if (node) nodes.set(row.id, node);
  }
  return findNodeFaults([...nodes.values()]);
}

/** The axis as the file would have it; null when it hangs on no network. */
function withRow(
  stored: StoredNode | undefined,
  { id, key, after, parents, rowNumber }: Resolved,
  names: ReadonlyMap<string, string>,
): NetworkNode | null {
  const networkId = parents.networkId ?? stored?.networkId;
  if (networkId === undefined) return null;
  const number = (field: "nodeAddress" | "ringOrder") =>
    typeof after[field] === "number" ? after[field] : (stored?.[field] ?? null);
  return {
    ...{
      axisId: id,
      axis: readable(key),
      networkId,
      network: names.get(networkId) ?? "the network",
      rowNumber,
    },
    ...{ nodeAddress: number("nodeAddress"), ringOrder: number("ringOrder") },
  };
}

/** The axes of these networks, and of those the axes themselves hang on. */
function readNodes(tx: Transaction, axisIds: readonly string[], networkIds: readonly string[]) {
  return tx.$queryRaw<StoredNode[]>`
    SELECT a."id"::text AS "axisId", l."code" || ' ' || m."code" || ' ' || a."code" AS "axis",
      n."id"::text AS "networkId", n."name" AS "network", a."nodeAddress", a."ringOrder"
    FROM "Axis" a
    JOIN "Network" n ON n."id" = a."networkId"
    JOIN "Machine" m ON m."id" = a."machineId"
    JOIN "Line" l ON l."id" = m."lineId"
    WHERE a."networkId" = ANY(${networkIds}::uuid[])
      OR a."networkId" IN (SELECT "networkId" FROM "Axis" WHERE "id" = ANY(${axisIds}::uuid[]))
    ORDER BY 2`;
}

function readable(key: string): string {
  return key.split("\u241F").join(" ");
}
