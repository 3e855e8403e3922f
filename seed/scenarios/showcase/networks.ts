import { apportionWithin } from "@/seed/scenarios/showcase/apportion";
import type { PlannedAxis } from "@/seed/scenarios/showcase/axes";
import type { DriveFamily } from "@/seed/scenarios/showcase/lineTable";
import { siteId } from "@/seed/scenarios/showcase/sites";
import { seedId } from "@/seed/seedId";
import type { NetworkRow } from "@/seed/siteTables";

/** Where an axis sits on a network. */
export interface Seat {
  readonly networkId: string | null;
  readonly nodeAddress: number | null;
  readonly ringOrder: number | null;
}

interface PlannedNetworks {
  readonly networks: NetworkRow[];
  readonly seats: ReadonlyMap<PlannedAxis, Seat>;
}

const RINGS = 78;
const RING_LEAST = 4;
const RING_MOST = 16;
/** Rings whose record has two neighbours the wrong way round. */
const WRONG_ORDER = ["VEL-03-R1", "PIN-03-R2", "TAD-02-R1"];

const KIND: Readonly<Record<DriveFamily, NetworkRow["kind"]>> = {
  HR: "fibre_ring",
  OK: "fibre_ring",
  HE: "ethernet",
  EL: "ethernet",
  BI: "analogue",
  LA: "pulse",
  UN: "unknown",
};
const MARK = { fibre_ring: "R", ethernet: "E", analogue: "N", pulse: "P", unknown: "U" } as const;

/** Sites whose drawings name the profile family of their rings. */
const FAMILY_ON_DRAWING = ["VEL", "THO"];
/** The profile family of fibre rings after IEC 61491, from memory. */
const RING_FAMILY = 16;

const familyOf = (site: string, kind: NetworkRow["kind"]): number | null =>
  kind === "fibre_ring" && FAMILY_ON_DRAWING.includes(site) ? RING_FAMILY : null;

function grouped(axes: readonly PlannedAxis[], keyOf: (axis: PlannedAxis) => string): PlannedAxis[][] {
  const groups = new Map<string, PlannedAxis[]>();
  for (const axis of axes) {
    const key = keyOf(axis);
    groups.set(key, [...(groups.get(key) ?? []), axis]);
  }
  return [...groups.values()];
}

/** Parts the ring axes of the group, line by line and maker by maker, into rings of 4 to 16. */
function partRings(axes: readonly PlannedAxis[]): PlannedAxis[][] {
  const strands = grouped(axes, (axis) => `${axis.machine.line.code}/${axis.family}`);
  const rings = apportionWithin(
    RINGS,
    strands.map(({ length }) => ({
      weight: length,
      least: Math.ceil(length / RING_MOST),
      most: Math.floor(length / RING_LEAST),
    })),
  );
  return strands.flatMap((strand, s) => {
    const count = rings[s] ?? 1;
    return Array.from({ length: count }, (_, r) =>
      strand.slice(Math.floor((r * strand.length) / count), Math.floor(((r + 1) * strand.length) / count)),
    );
  });
}

/** The order recorded for a ring of so many: as it is, or with its second and third place changed over. */
function ringOrder(name: string, place: number): number {
  if (!WRONG_ORDER.includes(name)) return place;
  return place === 2 ? 3 : place === 3 ? 2 : place;
}

/** Networks and the seat of each axis on them; a drive nobody identified has none. */
export function planNetworks(axes: readonly PlannedAxis[]): PlannedNetworks {
  const isRing = (axis: PlannedAxis) => KIND[axis.family] === "fibre_ring";
  const strands = [
    ...partRings(axes.filter(isRing)),
    ...grouped(
      axes.filter((axis) => !isRing(axis) && axis.family !== "UN"),
      (axis) => `${axis.machine.line.code}/${KIND[axis.family]}`,
    ),
  ];
  const networks: NetworkRow[] = [];
  const seats = new Map<PlannedAxis, Seat>();
  const numbers = new Map<string, number>();
  for (const strand of strands) {
    const [first] = strand;
    if (!first) continue;
    const { line } = first.machine;
    const kind = KIND[first.family];
    const stem = `${line.code}-${MARK[kind]}`;
    const number = (numbers.get(stem) ?? 0) + 1;
    numbers.set(stem, number);
    const name = `${stem}${number}`;
    const id = seedId("Network", `${line.site}/${name}`);
    networks.push({ id, siteId: siteId(line.site), name, kind, profileFamily: familyOf(line.site, kind) });
    const hasAddress = kind === "fibre_ring" || kind === "ethernet";
    strand.forEach((axis, i) => {
      seats.set(axis, {
        networkId: id,
        nodeAddress: hasAddress ? i + (kind === "ethernet" ? 11 : 1) : null,
        ringOrder: kind === "fibre_ring" ? ringOrder(name, i + 1) : null,
      });
    });
  }
  return { networks, seats };
}
