import { err, ok, type Result } from "@/lib/kernel/result";

/** One line of a ring's record: a drive as a node of the light path. */
export interface RingRow {
  readonly axisId: string;
  /** What people call the node, e.g. `M02 / A03`. */
  readonly label: string;
  /** Address set on the drive; null is not known. */
  readonly nodeAddress: number | null;
  /** Place in the light path, from 1 after the controller; null is not known. */
  readonly ringOrder: number | null;
}

/** What stands before the first node and after the last: the controller closes the ring. */
export const CONTROLLER_END = "controller";

/** A node with the nodes its light comes from and goes to; null is not known. */
export type RingNode<Row extends RingRow> = Row & {
  readonly upstream: string | null;
  readonly downstream: string | null;
};

/** What in the record of a ring cannot be right, or is missing. */
export type RingFinding =
  /** No node is recorded at these places, first and last. */
  | { readonly kind: "gap"; readonly from: number; readonly to: number }
  | { readonly kind: "place-doubled"; readonly place: number; readonly labels: readonly string[] }
  | { readonly kind: "address-doubled"; readonly address: number; readonly labels: readonly string[] }
  /** The address falls along the light path. */
  | { readonly kind: "order"; readonly label: string; readonly after: string }
  | { readonly kind: "not-placed"; readonly label: string }
  | { readonly kind: "address-unknown"; readonly label: string };

export interface Ring<Row extends RingRow> {
  /** In light-path order; nodes without a place come last. */
  readonly nodes: readonly RingNode<Row>[];
  readonly findings: readonly RingFinding[];
}

/** A row that no ring can hold, counted from 1, and why. */
export interface RingRefusal {
  readonly row: number;
  readonly reason: string;
}

/**
 * Reads the record of one ring: the light-path order, each node's neighbours, and what does not fit.
 *
 * A ring is a series system: each node repeats the light for the next, so all of its nodes stop with any one of them,
 * and no drive of it can be converted alone.
 *
 * Light runs controller → place 1 → 2 → … → last → controller; a neighbour is named only where exactly one node is
 * recorded at the next place. Addresses are taken to rise along the path (common practice, no source; the ring itself,
 * IEC 61491 from memory, does not ask for it), so a falling one is a finding, not an error.
 *
 * @param rows One per node. Places are whole from 1, addresses whole from 0.
 * @returns The ring, or the first row refused: one axis on two nodes, or a place or address that cannot be.
 */
export function readRing<Row extends RingRow>(rows: readonly Row[]): Result<Ring<Row>, RingRefusal> {
  const refused = refusedRow(rows);
  if (refused) return err(refused);
  const placed = rows.filter((row) => row.ringOrder !== null).sort((a, b) => placeOf(a) - placeOf(b));
  const unplaced = rows.filter((row) => row.ringOrder === null);
  const byPlace = groupBy(placed, placeOf);
  const last = placed.length === 0 ? 0 : placeOf(placed[placed.length - 1] as Row);
  const at = (place: number) => (place < 1 || place > last ? CONTROLLER_END : onlyLabel(byPlace.get(place)));
  const nodes = placed.map((row) => {
    const place = placeOf(row);
    // Nodes past the last known place may be anywhere, so the end of the path is not known either.
    const next = place === last && unplaced.length > 0 ? null : at(place + 1);
    return { ...row, upstream: at(place - 1), downstream: next };
  });
  return ok({
    nodes: [...nodes, ...unplaced.map((row) => ({ ...row, upstream: null, downstream: null }))],
    findings: [
      ...gaps(byPlace, last),
      ...doubledPlaces(byPlace),
      ...doubledAddresses(rows),
      ...fallingAddresses(placed),
      ...unplaced.map(({ label }) => ({ kind: "not-placed", label }) as const),
      ...rows
        .filter(({ nodeAddress }) => nodeAddress === null)
        .map(({ label }) => ({ kind: "address-unknown", label }) as const),
    ],
  });
}

const placeOf = (row: RingRow): number => row.ringOrder ?? 0;

const cannotBe = (value: number | null, least: number) =>
  value !== null && !(Number.isInteger(value) && value >= least);

function refusedRow(rows: readonly RingRow[]): RingRefusal | null {
  const seen = new Map<string, number>();
  for (const [index, { axisId, label, ringOrder, nodeAddress }] of rows.entries()) {
    const row = index + 1;
    const before = seen.get(axisId);
    if (before !== undefined)
      return { row, reason: `${label} already stands on the node of row ${before}: an axis has one node.` };
    seen.set(axisId, row);
    if (cannotBe(ringOrder, 1))
      return { row, reason: `${label} has place ${ringOrder}: a place is a whole number from 1.` };
    if (cannotBe(nodeAddress, 0))
      return { row, reason: `${label} has address ${nodeAddress}: an address is a whole number from 0.` };
  }
  return null;
}

function groupBy<Row, Key>(rows: readonly Row[], keyOf: (row: Row) => Key): Map<Key, Row[]> {
  const groups = new Map<Key, Row[]>();
  for (const row of rows) groups.set(keyOf(row), [...(groups.get(keyOf(row)) ?? []), row]);
  return groups;
}

const labelsOf = (rows: readonly RingRow[]): string[] => rows.map(({ label }) => label);

function onlyLabel(rows: readonly RingRow[] | undefined): string | null {
  return rows?.length === 1 ? (rows[0]?.label ?? null) : null;
}

function gaps(byPlace: ReadonlyMap<number, unknown>, last: number): RingFinding[] {
  const places = [0, ...[...byPlace.keys()].sort((a, b) => a - b)];
  return places.flatMap((place, index) => {
    const next = places[index + 1] ?? last + 1;
    return next - place > 1 ? [{ kind: "gap", from: place + 1, to: next - 1 } as const] : [];
  });
}

function doubledPlaces(byPlace: ReadonlyMap<number, readonly RingRow[]>): RingFinding[] {
  return [...byPlace]
    .filter(([, rows]) => rows.length > 1)
    .map(([place, rows]) => ({ kind: "place-doubled", place, labels: labelsOf(rows) }));
}

function doubledAddresses(rows: readonly RingRow[]): RingFinding[] {
  const byAddress = groupBy(rows, ({ nodeAddress }) => nodeAddress);
  return [...byAddress].flatMap(([address, same]) =>
    address === null || same.length < 2
      ? []
      : [{ kind: "address-doubled", address, labels: labelsOf(same) } as const],
  );
}

function fallingAddresses(placed: readonly RingRow[]): RingFinding[] {
  const known = placed.filter(({ nodeAddress }) => nodeAddress !== null);
  return known.flatMap((row, index) => {
    const before = known[index - 1];
    if (!before || (row.nodeAddress ?? 0) >= (before.nodeAddress ?? 0)) return [];
    return [{ kind: "order", label: row.label, after: before.label } as const];
  });
}
