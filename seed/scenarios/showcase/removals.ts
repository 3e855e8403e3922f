import type { PlannedRemovalRow } from "@/seed/projectTables";
import { partId } from "@/seed/scenarios/showcase/parts";
import type { PlannedPosition } from "@/seed/scenarios/showcase/positions";
import { PROJECTS, type ProjectSpec } from "@/seed/scenarios/showcase/projectSpecs";
import { projectId } from "@/seed/scenarios/showcase/projects";
import { lineId } from "@/seed/scenarios/showcase/sites";
import { seedId } from "@/seed/seedId";

/** The family whose drives still on the line go when the project ends, tested and kept. */
const TAKEN_OUT: Readonly<Record<string, string>> = { "KAR-02-R1": "HR" };

function removalsOf(
  { code, line, endsOn }: ProjectSpec,
  positions: readonly PlannedPosition[],
): PlannedRemovalRow[] {
  const family = TAKEN_OUT[code];
  const counts = new Map<string, number>();
  for (const { machine, axis, row, partKey } of positions) {
    if (machine.line.code !== line || axis?.family !== family) continue;
    if (row.itemClass === "drive" && partKey !== null) counts.set(partKey, (counts.get(partKey) ?? 0) + 1);
  }
  return [...counts].sort().map(([key, units]) => ({
    id: seedId("PlannedRemoval", `${code}/${key}`),
    projectId: projectId(code),
    lineId: lineId(line),
    partId: partId(key),
    units,
    leavesOn: endsOn,
    kept: true,
  }));
}

/** Units the running projects still take out of their lines. */
export function removalRows(positions: readonly PlannedPosition[]): PlannedRemovalRow[] {
  return PROJECTS.filter(({ code }) => code in TAKEN_OUT).flatMap((project) =>
    removalsOf(project, positions),
  );
}
