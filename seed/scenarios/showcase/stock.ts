import { addDays } from "@/lib/kernel/isoDate";
import { type RandomStream, randomStream } from "@/lib/kernel/random";
import type { StockState } from "@/lib/spares/usableCount";
import { apportion } from "@/seed/scenarios/showcase/apportion";
import { D0 } from "@/seed/scenarios/showcase/moment";
import { partId } from "@/seed/scenarios/showcase/parts";
import type { PlannedPosition } from "@/seed/scenarios/showcase/positions";
import { SITES, siteId } from "@/seed/scenarios/showcase/sites";
import { type Shelf, TOLD_SHELVES } from "@/seed/scenarios/showcase/toldStock";
import { seedId } from "@/seed/seedId";
import type { StockLotRow } from "@/seed/tables";

// Pieces on the books of the whole group by part; about four in five of them are usable.
const BOOKED = `
HE-010 12,HE-020 15,HE-040 12,HE-080 8,EL-010 9,EL-020 10,EL-040 9,EL-080 5,BI-010 5,BI-020 8,BI-040 5,BI-080 2,LA-010 4,LA-020 6,LA-040 4,LA-080 2
WR-010 13,WR-020 18,WR-040 11,WR-080 7,WR-150 4,FI-010 15,FI-020 22,FI-040 14,FI-080 9,RO-010 9,RO-020 12,RO-040 9,RO-080 5
S3-300 7,S5-500 10,S7-700 10,PB-16 13,PN-16 17,L8-08 14,LX-12 15,BK-240 48,GL-01 6,LR-01 8
`;
const USABLE_SHARE = 0.8;
const OTHER_STATES: readonly StockState[] = ["unproven", "on_hold", "wrong_revision"];

interface Drawn {
  readonly chance: RandomStream;
  readonly places: ReadonlyMap<string, number>;
}

/** A piece for each site that has the part, as far as they reach, the biggest first; the rest by what is installed. */
function oneEachFirst(pieces: number, weights: readonly number[]): number[] {
  const present = weights.filter((weight) => weight > 0).length;
  if (pieces < present) return apportion(pieces, weights, { most: 1 });
  const rest = apportion(pieces - present, weights);
  return weights.map((weight, i) => (weight > 0 ? 1 : 0) + (rest[i] ?? 0));
}

/** Shelves of a part: usable pieces lie where most are installed, the others where the draw puts them. */
function shelvesOf(entry: string, { chance, places }: Drawn): Shelf[] {
  const [key = "", count] = entry.split(" ");
  const booked = Number(count);
  const usable = Math.round(booked * USABLE_SHARE);
  const weights = SITES.map(({ code }) => places.get(`${code}/${key}`) ?? 0);
  const bySite = oneEachFirst(usable, weights);
  const shelves = SITES.map(
    ({ code }, i): Shelf => ({ site: code, key, state: "usable", quantity: bySite[i] ?? 0 }),
  );
  const used = SITES.filter((_, i) => (weights[i] ?? 0) > 0);
  const others = Array.from({ length: booked - usable }, (): Shelf => {
    return { site: chance.pick(used).code, key, state: chance.pick(OTHER_STATES), quantity: 1 };
  });
  return [...shelves, ...others].filter(({ quantity }) => quantity > 0);
}

function placesBySite(positions: readonly PlannedPosition[]): Map<string, number> {
  const places = new Map<string, number>();
  for (const { machine, partKey } of positions) {
    const key = `${machine.line.site}/${partKey}`;
    places.set(key, (places.get(key) ?? 0) + 1);
  }
  return places;
}

/** One lot for each site, part, revision, state and remark. */
function merged(shelves: readonly Shelf[]): Shelf[] {
  const lots = new Map<string, Shelf>();
  for (const shelf of shelves) {
    const key = [shelf.site, shelf.key, shelf.state, shelf.revision, shelf.note].join("/");
    const before = lots.get(key);
    lots.set(key, before ? { ...before, quantity: before.quantity + shelf.quantity } : shelf);
  }
  return [...lots.values()];
}

function poweredOn({ state, lastPoweredOn }: Shelf, chance: RandomStream): string | null {
  if (lastPoweredOn !== undefined) return lastPoweredOn;
  const days = state === "usable" ? chance.integer(20, 330) : chance.integer(400, 2400);
  return addDays(D0, -days);
}

/** The shelves of the six storerooms: the drives as the story tells them, the rest by what is installed. */
export function stockRows(seed: number, positions: readonly PlannedPosition[]): StockLotRow[] {
  const chance = randomStream(seed, "stock");
  const drawn = { chance, places: placesBySite(positions) };
  const entries = BOOKED.trim().split(/[\n,]/);
  const shelves = merged([...TOLD_SHELVES, ...entries.flatMap((entry) => shelvesOf(entry, drawn))]);
  return shelves.map((shelf, i) => {
    const { site, key, state, quantity } = shelf;
    const bin = `R${chance.integer(1, 6)}-${String(i + 1).padStart(3, "0")}`;
    const revision = shelf.revision ?? "";
    return {
      id: seedId("StockLot", [site, key, bin, revision, state].join("/")),
      siteId: siteId(site),
      partId: partId(key),
      bin,
      revision,
      state,
      quantity,
      lastPoweredOn: poweredOn(shelf, chance),
      countedOn: addDays(D0, -chance.integer(10, 300)),
      reservedFor: shelf.reservedFor ?? null,
      note: shelf.note ?? null,
      evidence: site === "TAD" ? "inferred" : "documented",
    };
  });
}
