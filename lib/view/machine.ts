import type { IsoDate } from "@/lib/kernel/isoDate";
import type { Evidence, ItemClass } from "@/lib/risk/evaluation";
import type { AxisFacts } from "@/lib/schema/axisFacts";
import { NOT_KNOWN, significant } from "@/lib/view/number";
import { day } from "@/lib/view/time";

export type NetworkKind = "fibre_ring" | "ethernet" | "analogue" | "pulse" | "unknown";

const NETWORK_KINDS = {
  fibre_ring: "fibre ring",
  ethernet: "Ethernet",
  analogue: "analogue ±10 V",
  pulse: "pulse input",
  unknown: "kind not known",
} as const satisfies Record<NetworkKind, string>;

/** How drives are reached, in words. */
export function networkKindName(kind: NetworkKind): string {
  return NETWORK_KINDS[kind];
}

export const networkKinds = Object.keys(NETWORK_KINDS) as NetworkKind[];

export interface LineLabel {
  readonly id: string;
  readonly code: string;
}

export interface PartLabel {
  readonly id: string;
  readonly number: string;
}

/** A unit in a place, from a day to a day. */
export interface PlacedUnit {
  readonly unitId: string;
  readonly serial: string;
  readonly revision: string | null;
  readonly madeYear: number | null;
  readonly part: PartLabel;
  /** Null is before records began. */
  readonly fromOn: IsoDate | null;
  /** Null is still there on the day looked at. */
  readonly untilOn: IsoDate | null;
  /** Other places the unit was in, at sites the reader may see, oldest first. */
  readonly elsewhere: readonly UnitStay[];
}

/** A stay of a unit in another place. */
export interface UnitStay {
  readonly machineId: string;
  readonly place: string;
  readonly fromOn: IsoDate | null;
  readonly untilOn: IsoDate | null;
}

/** A place of a machine with what is in it and what was. */
export interface MachinePosition {
  readonly id: string;
  readonly designation: string;
  /** The panel it stands in; null is not known, or at the machine itself. */
  readonly panel: { readonly id: string; readonly designation: string } | null;
  readonly itemClass: ItemClass;
  readonly evidence: Evidence;
  /** Null is not identified. */
  readonly part: PartLabel | null;
  /** Null is no unit recorded in the place. */
  readonly unit: PlacedUnit | null;
  /** Units that were in the place before, newest first. */
  readonly before: readonly PlacedUnit[];
}

/** A cabinet of a machine. */
export interface MachinePanel {
  readonly id: string;
  readonly designation: string;
  readonly name: string | null;
  /** How to find it, in words. */
  readonly location: string | null;
}

export interface MachineAxis extends AxisFacts {
  readonly id: string;
  readonly code: string;
  readonly name: string | null;
  readonly inServiceYear: number | null;
  readonly network: {
    readonly id: string;
    readonly name: string;
    readonly kind: NetworkKind;
    /** Number of its communication profile family; null is not known. */
    readonly profileFamily: number | null;
  } | null;
  readonly nodeAddress: number | null;
  readonly ringOrder: number | null;
  readonly feedback: string | null;
  readonly countsPerRev: number | null;
  readonly motorRevs: number | null;
  readonly loadRevs: number | null;
  readonly unitsPerLoadRev: number | null;
  /** Counts for one unit of travel; null when a figure is missing. */
  readonly countsPerUnit: number | null;
  readonly evidence: Evidence;
  readonly positions: readonly MachinePosition[];
}

export interface MachineController {
  readonly id: string;
  readonly designation: string;
  readonly model: string;
  readonly hardware: string | null;
  readonly firmware: number | null;
  readonly firmwareRaw: string | null;
  readonly memoryPercent: number | null;
  readonly axisLimit: number | null;
  readonly readOn: IsoDate | null;
  readonly evidence: Evidence;
  /** Axes it drives on all its machines. */
  readonly axes: number;
  /** Codes of the machines it runs besides this one. */
  readonly sharedWith: readonly string[];
  /** The line it leads; null leads none. */
  readonly leadsLine: LineLabel | null;
  /** The lines of its machines. */
  readonly lines: readonly LineLabel[];
}

/** One machine on a day: controller, axes, places and what was in them. */
export interface MachineDossier {
  readonly asOf: IsoDate;
  readonly id: string;
  readonly code: string;
  readonly name: string;
  readonly inServiceYear: number | null;
  /** Since when and why it counts in no figure; null is in service on the day. */
  readonly retired: { readonly on: IsoDate; readonly reason: string } | null;
  readonly line: { readonly id: string; readonly code: string; readonly name: string };
  readonly site: {
    readonly id: string;
    readonly code: string;
    readonly name: string;
    readonly timeZone: string;
  };
  readonly controller: MachineController | null;
  readonly panels: readonly MachinePanel[];
  readonly axes: readonly MachineAxis[];
  /** Places that belong to no axis. */
  readonly items: readonly MachinePosition[];
}

/** All places of a machine, those of its axes first. */
export function placesOf(machine: Pick<MachineDossier, "axes" | "items">): MachinePosition[] {
  return [...machine.axes.flatMap(({ positions }) => positions), ...machine.items];
}

/** The places of a machine by panel, in the order of the panels; those in none known come last. */
export function placesByPanel(
  machine: Pick<MachineDossier, "panels" | "axes" | "items">,
): { readonly panel: MachinePanel | null; readonly places: readonly MachinePosition[] }[] {
  const places = placesOf(machine);
  return [...machine.panels, null]
    .map((panel) => ({
      panel,
      places: places.filter((place) => (place.panel?.id ?? null) === (panel?.id ?? null)),
    }))
    .filter((group) => group.places.length > 0);
}

/** Turns of the motor for turns of the load: `10 : 3`. */
export function gearingWords({ motorRevs, loadRevs }: Pick<MachineAxis, "motorRevs" | "loadRevs">): string {
  return motorRevs === null || loadRevs === null ? NOT_KNOWN : `${motorRevs} : ${loadRevs}`;
}

/** Travel in one turn of the load: `400 mm`. */
export function travelWords(axis: Pick<MachineAxis, "unitsPerLoadRev" | "travelUnit">): string {
  if (axis.unitsPerLoadRev === null) return NOT_KNOWN;
  return `${axis.unitsPerLoadRev} ${axis.travelUnit ?? "(unit not known)"}`;
}

/** Counts for one unit of travel: `8 738.13 per mm`. */
export function countsWords(axis: Pick<MachineAxis, "countsPerUnit" | "travelUnit">): string {
  if (axis.countsPerUnit === null) return NOT_KNOWN;
  return `${significant(axis.countsPerUnit, 6)} per ${axis.travelUnit ?? "unit of travel"}`;
}

/** From when to when, in words. */
export function stayWords({ fromOn, untilOn }: Pick<UnitStay, "fromOn" | "untilOn">): string {
  const from = fromOn === null ? "from before records began" : `from ${day(fromOn)}`;
  return untilOn === null ? from : `${from} until ${day(untilOn)}`;
}

/** `3 axes, since 2004, on VEL-03-K1`. */
export function machineLead({ axes, inServiceYear, controller, items }: MachineDossier): string {
  const positions = placesOf({ axes, items });
  const unread = positions.filter(({ part }) => part === null).length;
  return [
    `${axes.length} ${axes.length === 1 ? "axis" : "axes"} and ${positions.length} places`,
    unread === 0 ? "all identified" : `${unread} not identified`,
    inServiceYear === null ? "year not known" : `in service since ${inServiceYear}`,
    controller === null ? "no controller recorded" : `driven by ${controller.designation}`,
  ].join(", ");
}
