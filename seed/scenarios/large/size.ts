import { createHash } from "node:crypto";

/** How much of everything the large scenario holds. */
export const SIZE = {
  sites: 60,
  linesPerSite: 25,
  machinesPerLine: 8,
  axesPerMachine: 10,
  otherItemsPerMachine: 5,
  families: 400,
  parts: 8_000,
  stockLots: 24_000,
  events: 1_000_000,
} as const;

export const LINES = SIZE.sites * SIZE.linesPerSite;
export const MACHINES = LINES * SIZE.machinesPerLine;
export const AXES = MACHINES * SIZE.axesPerMachine;
/** A drive and a motor at each axis, and the machines' other items. */
export const PLACES_PER_MACHINE = SIZE.axesPerMachine * 2 + SIZE.otherItemsPerMachine;
export const POSITIONS = MACHINES * PLACES_PER_MACHINE;

export const LARGE_SEED = 20261201;

const stems = new Map<string, string>();

/**
 * The id of the n-th row of a table: a name-based stem and the number, since a hash for each of a million takes long.
 *
 * The number also stands scattered in front: ids alike in their first half make the indexes that keep a place to one
 * unit degenerate.
 */
export function numberedId(table: string, n: number): string {
  let stem = stems.get(table);
  if (stem === undefined) {
    const hex = createHash("sha256").update(`ebbline/large/${table}`).digest("hex");
    stem = `-${hex.slice(0, 4)}-8${hex.slice(5, 8)}-8${hex.slice(9, 12)}-`;
    stems.set(table, stem);
  }
  return scattered(n) + stem + n.toString(16).padStart(12, "0");
}

/** Multiplication by an odd number is one to one in 32 bits. */
function scattered(n: number): string {
  return (Math.imul(n, 0x9e3779b1) >>> 0).toString(16).padStart(8, "0");
}

/** A number with leading zeros, so that codes sort. */
export const padded = (n: number, width: number): string => String(n).padStart(width, "0");

export const upTo = (count: number): number[] => Array.from({ length: count }, (_, i) => i);
