import { type IsoDate, yearsBetween } from "@/lib/kernel/isoDate";
import { requireCount } from "@/lib/kernel/requireNumber";

/** Why a piece on the books may not help. */
export type StockState =
  | "usable"
  | "unproven"
  | "wrong_revision"
  | "on_hold"
  | "reserved"
  | "removed_untested"
  | "beyond_repair";

export interface StockLot {
  readonly siteId: string;
  readonly state: StockState;
  /** Pieces; null is not counted. */
  readonly quantity: number | null;
  /** Null is not known. */
  readonly lastPoweredOn: IsoDate | null;
}

/** Chance that a piece works after lying unpowered for less than `untilYears`; null is any time. */
export interface StorageBand {
  readonly untilYears: number | null;
  readonly works: number;
}

export interface StorageRules {
  readonly asOf: IsoDate;
  /** Shortest time first, the last one open. */
  readonly bands: readonly StorageBand[];
  /** Chance for a usable piece whose last power-up nobody knows. */
  readonly unknownWorks: number;
  readonly unprovenWorks: number;
  readonly removedUntestedWorks: number;
}

export interface UsableCount {
  /** Pieces on the books; null when lots are there and none is counted. */
  readonly book: number | null;
  /** Pieces expected to work. */
  readonly usable: number;
  readonly bySite: Readonly<Record<string, { readonly book: number; readonly usable: number }>>;
  /** Pieces off the book count by reason; with `usable` they add up to the book. */
  readonly deductions: readonly {
    readonly reason: StockState | "storage" | "not_counted";
    readonly pieces: number;
  }[];
  /** Pieces alike in their chance of working: what the chance of an empty shelf is computed from. */
  readonly pieces: readonly { readonly count: number; readonly works: number }[];
  readonly lotsNotCounted: number;
  readonly piecesOfUnknownStorage: number;
}

const REASONS = [
  "wrong_revision",
  "on_hold",
  "reserved",
  "unproven",
  "removed_untested",
  "beyond_repair",
  "storage",
  "not_counted",
] as const;

/** Chance that a usable piece works when powered, by the years since it last was. */
export function worksAfterStorage(lastPoweredOn: IsoDate | null, rules: StorageRules): number {
  // A power-up after the day looked at was not known on it.
  if (lastPoweredOn === null || lastPoweredOn > rules.asOf) return rules.unknownWorks;
  const years = yearsBetween(lastPoweredOn, rules.asOf);
  const band = rules.bands.find(({ untilYears }) => untilYears === null || years < untilYears);
  if (!band) throw new RangeError(`bands must end with an open one, got none for ${years} years`);
  return band.works;
}

/** Chance that a piece in its state works, by the rules. */
export function worksInState(lot: StockLot, rules: StorageRules): number {
  if (lot.state === "usable") return worksAfterStorage(lot.lastPoweredOn, rules);
  if (lot.state === "unproven") return rules.unprovenWorks;
  return lot.state === "removed_untested" ? rules.removedUntestedWorks : 0;
}

interface Tally {
  readonly bySite: Record<string, { book: number; usable: number }>;
  readonly off: Map<string, number>;
  readonly pieces: Map<number, number>;
  lotsNotCounted: number;
  piecesOfUnknownStorage: number;
}

const add = <K>(map: Map<K, number>, key: K, value: number) => map.set(key, (map.get(key) ?? 0) + value);

function siteOf(tally: Tally, siteId: string) {
  tally.bySite[siteId] ??= { book: 0, usable: 0 };
  return tally.bySite[siteId] as { book: number; usable: number };
}

function tallyLot(tally: Tally, lot: StockLot, rules: StorageRules): void {
  const site = siteOf(tally, lot.siteId);
  if (lot.quantity === null) {
    tally.lotsNotCounted += 1;
    tally.off.set("not_counted", 0);
    return;
  }
  const count = requireCount(lot.quantity, "quantity");
  if (count === 0) return;
  const works = worksInState(lot, rules);
  site.book += count;
  site.usable += count * works;
  if (works < 1) add(tally.off, lot.state === "usable" ? "storage" : lot.state, count * (1 - works));
  if (works > 0) add(tally.pieces, works, count);
  const knownPower = lot.lastPoweredOn !== null && lot.lastPoweredOn <= rules.asOf;
  if (lot.state === "usable" && !knownPower) tally.piecesOfUnknownStorage += count;
}

/**
 * Counts the spares that will work when needed, and says what was taken off the books and why.
 *
 * usable = sum over lots of pieces * P(works): by years since last powered when usable, by rule when unproven or
 * removed and untested, 0 otherwise. A lot nobody counted adds nothing and is reported.
 *
 * @throws {RangeError} naming the argument and its value.
 */
export function usableCount(lots: readonly StockLot[], rules: StorageRules): UsableCount {
  const tally: Tally = {
    bySite: {},
    off: new Map(),
    pieces: new Map(),
    lotsNotCounted: 0,
    piecesOfUnknownStorage: 0,
  };
  for (const lot of lots) tallyLot(tally, lot, rules);
  const { bySite, off, pieces, lotsNotCounted, piecesOfUnknownStorage } = tally;
  const sites = Object.values(bySite);
  const book = sites.reduce((sum, site) => sum + site.book, 0);
  return {
    book: lots.length > 0 && lotsNotCounted === lots.length ? null : book,
    usable: sites.reduce((sum, site) => sum + site.usable, 0),
    bySite,
    deductions: REASONS.flatMap((reason) => {
      const taken = off.get(reason);
      return taken === undefined ? [] : [{ reason, pieces: taken }];
    }),
    pieces: [...pieces].map(([works, count]) => ({ count, works })),
    lotsNotCounted,
    piecesOfUnknownStorage,
  };
}
