import "server-only";
import type { Transaction } from "@/lib/data/change";
import type { Resolved, Unsettled } from "@/lib/data/intake/resolve";

/** Rows that would give a line a second leading controller. */
export async function findLeadingTwice(tx: Transaction, resolved: readonly Resolved[]): Promise<Unsettled[]> {
  const leading = resolved.filter(
    ({ entity, parents }) => entity === "Controller" && parents.leadsLineId !== undefined,
  );
  if (leading.length === 0) return [];
  const stored = await tx.controller.findMany({
    where: { leadsLineId: { in: leading.flatMap(({ parents }) => parents.leadsLineId ?? []) } },
    select: { id: true, designation: true, leadsLineId: true },
  });
  // A controller the file gives another line to makes room; one that only stays where it is does not.
  const moved = new Map(leading.map(({ id, parents }) => [id, parents.leadsLineId]));
  const leads = new Map<string, { id: string; name: string }>();
  for (const { id, designation, leadsLineId } of stored)
    if (leadsLineId !== null && (moved.get(id) ?? leadsLineId) === leadsLineId)
      leads.set(leadsLineId, { id, name: designation });
  return leading.flatMap(({ id, key, parents, rowNumber }) => {
    const line = parents.leadsLineId ?? "";
    const other = leads.get(line);
    if (other === undefined || other.id === id) {
      leads.set(line, { id, name: key.split("\u241F").at(-1) ?? key });
      return [];
    }
    return [
      {
        rowNumber,
        field: "leadsLine",
        problem: `${other.name} leads this line already; a line has one leading controller`,
        remedy: "Leave the cell empty, or change the leading controller on the page of a machine first",
      },
    ];
  });
}
