import type { PanelRow } from "@/seed/panelTables";
import type { PlannedMachine } from "@/seed/scenarios/showcase/layout";
import type { PlannedPosition } from "@/seed/scenarios/showcase/positions";
import { seedId } from "@/seed/seedId";
import type { PositionRow } from "@/seed/tables";

/** Axes from which on the drives have a panel of their own. */
const OWN_PANEL_FROM = 9;
const MAIN = "+A1";
const DRIVES = "+A2";

/** Where panels stand, in turn; null is a panel nobody described. */
const LOCATIONS = [
  "behind the machine",
  "left of the gate",
  "on the platform, up the stairs",
  null,
  "in the panel room of the hall",
] as const;

/** Half of San Tadeo's machines have no record of their panels. */
const isRecorded = ({ line, code }: PlannedMachine): boolean =>
  line.site !== "TAD" || Number(code.slice(1)) % 2 === 1;

const idOf = (machine: PlannedMachine, designation: string): string =>
  seedId("Panel", `${machine.line.code}/${machine.code}/${designation}`);

function designationsOf({ axes }: PlannedMachine): [designation: string, name: string][] {
  const drives = axes.length >= OWN_PANEL_FROM;
  return [[MAIN, "Main panel"], ...(drives ? ([[DRIVES, "Drive panel"]] as [string, string][]) : [])];
}

/** The panels of each machine; those with many axes have a second one for the drives. */
export function panelRows(machines: readonly PlannedMachine[]): PanelRow[] {
  return machines.filter(isRecorded).flatMap((machine, place) =>
    designationsOf(machine).map(([designation, name]) => ({
      id: idOf(machine, designation),
      machineId: machine.id,
      ...{ designation, name },
      location: LOCATIONS[place % LOCATIONS.length] ?? null,
    })),
  );
}

/** Motors and operator panels sit at the machine; the rest stands in a panel. */
function panelOf({ machine, row }: PlannedPosition): string | null {
  if (!isRecorded(machine) || row.itemClass === "motor" || row.itemClass === "hmi") return null;
  const apart = row.itemClass === "drive" && machine.axes.length >= OWN_PANEL_FROM;
  return idOf(machine, apart ? DRIVES : MAIN);
}

/** The places with the panel each stands in. */
export function placedInPanels(positions: readonly PlannedPosition[]): PositionRow[] {
  return positions.map((position) => ({ ...position.row, panelId: panelOf(position) }));
}
