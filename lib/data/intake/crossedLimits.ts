import "server-only";
import type { Transaction } from "@/lib/data/change";
import type { Resolved, Unsettled } from "@/lib/data/intake/resolve";

const ENDS = [
  { low: "hardLow", high: "hardHigh", name: "hardware" },
  { low: "softLow", high: "softHigh", name: "software" },
] as const;

type End = (typeof ENDS)[number]["low" | "high"];
type Ends = Readonly<Record<End, number | null>>;

/** Rows whose end of travel crosses the other end, which is stored and the row does not name. */
export async function findCrossedLimits(
  tx: Transaction,
  resolved: readonly Resolved[],
): Promise<Unsettled[]> {
  const rows = resolved.filter(
    ({ entity, kind, after }) =>
      entity === "Axis" && kind === "change" && ENDS.some(({ low, high }) => low in after || high in after),
  );
  if (rows.length === 0) return [];
  const stored = await tx.$queryRaw<(Ends & { id: string })[]>`
    SELECT "id"::text AS "id", "hardLow"::float8 AS "hardLow", "hardHigh"::float8 AS "hardHigh",
      "softLow"::float8 AS "softLow", "softHigh"::float8 AS "softHigh"
    FROM "Axis" WHERE "id" = ANY(${rows.map(({ id }) => id)}::uuid[])`;
  const byId = new Map(stored.map((axis) => [axis.id, axis]));
  return rows.flatMap((row) => crossedIn(row, byId.get(row.id)));
}

function crossedIn({ after, rowNumber }: Resolved, stored: Ends | undefined): Unsettled[] {
  const endOf = (field: End) => {
    const said = after[field];
    return typeof said === "number" ? said : (stored?.[field] ?? null);
  };
  return ENDS.flatMap(({ low, high, name }) => {
    const [from, to] = [endOf(low), endOf(high)];
    if (from === null || to === null || from <= to) return [];
    return [
      {
        rowNumber,
        field: low in after ? low : high,
        problem: `The lower ${name} end would be ${from} and the upper one ${to}; one of them is stored already`,
        remedy: "Give both ends in the row, the lower one first",
      },
    ];
  });
}
