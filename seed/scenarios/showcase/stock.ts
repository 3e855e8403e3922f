import { addDays } from "@/lib/kernel/isoDate";
import { type RandomStream, randomStream } from "@/lib/kernel/random";
import { apportion } from "@/seed/scenarios/showcase/apportion";
import { D0 } from "@/seed/scenarios/showcase/moment";
import { partId } from "@/seed/scenarios/showcase/parts";
import type { PlannedPosition } from "@/seed/scenarios/showcase/positions";
import { SITES, siteId } from "@/seed/scenarios/showcase/sites";
import { type Shelf, TOLD_SHELVES } from "@/seed/scenarios/showcase/toldStock";
import { seedId } from "@/seed/seedId";
import type { StockLotRow, StockState } from "@/seed/tables";

// Pieces on the books of the whole group by part; about four in five of them are usable.
const BOOKED = `
HE-010 8,HE-020 12,HE-040 8,HE-080 4,EL-010 5,EL-020 7,EL-040 5,EL-080 3,BI-010 3,BI-020 5,BI-040 2,LA-010 2,LA-020 4,LA-040 2
WR-010 8,WR-020 12,WR-040 6,WR-080 3,WR-150 2,FI-010 10,FI-020 16,FI-040 9,FI-080 4,RO-010 5,RO-020 8,RO-040 5,RO-080 2
S3-300 4,S5-500 9,S7-700 8,PB-16 12,PN-16 16,L8-08 9,LX-12 14,BK-240 48,GL-01 6,LR-01 5
`;
const USABLE_SHARE = 0.8;
const OTHER_STATES: readonly StockState[] = ["unproven", "on_hold", "wrong_revision"];

interface Drawn {
  readonly chance: RandomStream;
  readonly places: ReadonlyMap<string, number>;
}

/** Shelves of a part: usable pieces lie where most are installed, the others where the draw puts them. */
function shelvesOf(entry: string, { chance, places }: Drawn): Shelf[] {
  const [key = "", count] = entry.split(" ");
  const booked = Number(count);
  const usable = Math.round(booked * USABLE_SHARE);
  const weights = SITES.map(({ code }) => places.get(`${code}/${key}`) ?? 0);
  const bySite = apportion(usable, weights);
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
