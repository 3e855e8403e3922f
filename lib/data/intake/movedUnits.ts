import "server-only";
import type { Transaction } from "@/lib/data/change";
import type { Resolved } from "@/lib/data/intake/resolve";

/** A unit the file puts in one place while it stands in another that the file leaves alone. */
export interface MovedUnit {
  readonly rowNumber: number;
  readonly field: null;
  readonly problem: string;
  readonly remedy: string;
}

/** Units that would be in two places at once. A swap where the file names both places is none. */
export async function findMovedUnits(tx: Transaction, resolved: readonly Resolved[]): Promise<MovedUnit[]> {
  const coming = new Map<string, Resolved>();
  const vacated = new Set<string>();
  for (const one of resolved) {
    if (one.entity !== "Placement" || one.kind === "same") continue;
    if (one.kind === "change") vacated.add(one.id);
    if (typeof one.after.unitId === "string") coming.set(one.after.unitId, one);
  }
  const standing = await tx.placement.findMany({
    where: { unitId: { in: [...coming.keys()] }, untilOn: null, id: { notIn: [...vacated] } },
    select: {
      unitId: true,
      unit: { select: { serial: true } },
      position: {
        select: { designation: true, machine: { select: { code: true, line: { select: { code: true } } } } },
      },
    },
  });
  return standing.flatMap(({ unitId, unit, position }) => {
    const row = coming.get(unitId);
    if (!row) return [];
    const place = `${position.machine.line.code} ${position.machine.code} ${position.designation}`;
    return [
      {
        rowNumber: row.rowNumber,
        field: null,
        problem: `Serial ${unit.serial} stands at ${place} in Ebbline`,
        remedy: "Read both nameplates; a move is loaded with both places in one file",
      },
    ];
  });
}
