import { type RandomStream, randomStream } from "@/lib/kernel/random";
import { apportion, apportionWithin } from "@/seed/scenarios/showcase/apportion";
import {
  type ControllerModel,
  DRIVE_FAMILIES,
  type DriveFamily,
  LINES,
  type LineSpec,
} from "@/seed/scenarios/showcase/lineTable";
import { seedId } from "@/seed/seedId";

export interface PlannedMachine {
  readonly id: string;
  readonly line: LineSpec;
  readonly code: string;
  readonly year: number;
  /** Drive family of each axis, in order. */
  readonly axes: readonly DriveFamily[];
  readonly controller: ControllerModel;
  /** Whether the controller is the line's leading one or another kind beside it. */
  readonly own: "lead" | "beside";
  /** Whether another machine of the same group of the line stands before it. */
  readonly follows: boolean;
}

/** Machines of a line that run one family of drives. */
interface Group {
  readonly family: DriveFamily;
  readonly axes: readonly DriveFamily[];
}

const SMALLEST_GROUP = 6;
const ETHERNET: readonly DriveFamily[] = ["HE", "EL"];

/** Year of a later part of a line, by line and family; the rest is as old as the line. */
const LATER: Readonly<Record<string, number>> = {
  "VEL-02/EL": 2018,
  "VEL-06/HE": 2019,
  "OST-02/EL": 2019,
  "KAR-02/HE": 2026,
};

function groupsOf(line: LineSpec): Group[] {
  const order = line.code === "KAR-02" ? (["HE", "HR"] as const) : DRIVE_FAMILIES;
  const large = order.filter((family) => family !== "UN" && line.axes[family] >= SMALLEST_GROUP);
  const largest = large.reduce((a, b) => (line.axes[b] > line.axes[a] ? b : a));
  const scattered = DRIVE_FAMILIES.filter((family) => !large.includes(family)).flatMap((family) =>
    Array<DriveFamily>(line.axes[family]).fill(family),
  );
  return large.map((family) => ({
    family,
    axes: [...Array<DriveFamily>(line.axes[family]).fill(family), ...(family === largest ? scattered : [])],
  }));
}

/** New drives on a line whose leading controller is below the floor stand on one machine of their own. */
const standsAlone = (line: LineSpec, { family }: Group): boolean =>
  ETHERNET.includes(family) && line.controller === "Slate 5" && line.firmware < 24;

function controllerOf(line: LineSpec, group: Group): Pick<PlannedMachine, "controller" | "own"> {
  if (standsAlone(line, group)) return { controller: "Slate 7", own: "beside" };
  if (line.code === "KAR-02" && group.family === "HR") return { controller: "Slate 5", own: "beside" };
  return { controller: line.controller, own: "lead" };
}

function machinesOf(line: LineSpec, chance: RandomStream): PlannedMachine[] {
  const groups = groupsOf(line);
  const machines = apportionWithin(
    line.machines,
    groups.map((group) => ({
      weight: group.axes.length,
      least: Math.max(1, Math.ceil(group.axes.length / 16)),
      most: standsAlone(line, group) ? 1 : Math.floor(group.axes.length / 3),
    })),
  );
  let number = 0;
  return groups.flatMap((group, g) => {
    const weights = Array.from({ length: machines[g] ?? 0 }, () => chance.between(0.6, 1.4));
    const year = LATER[`${line.code}/${group.family}`] ?? line.year;
    let from = 0;
    return apportion(group.axes.length, weights, { least: 3, most: 16 }).map((size, index) => {
      number += 1;
      from += size;
      const code = `M${String(number).padStart(2, "0")}`;
      return {
        id: seedId("Machine", `${line.code}/${code}`),
        line,
        code,
        year: year === line.year ? year + chance.integer(-1, 1) : year,
        axes: group.axes.slice(from - size, from),
        ...controllerOf(line, group),
        follows: index > 0,
      };
    });
  });
}

/** Machines of every line, 3 to 16 axes each, so that the sums of the line table hold. */
export function layout(seed: number): PlannedMachine[] {
  const chance = randomStream(seed, "machine");
  return LINES.flatMap((line) => machinesOf(line, chance));
}
