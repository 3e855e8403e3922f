import { randomStream } from "@/lib/kernel/random";
import type { ItemClass } from "@/lib/risk/evaluation";
import type { StockState } from "@/lib/spares/usableCount";
import { LARGE_SEED, numberedId, padded, SIZE, upTo } from "@/seed/scenarios/large/size";
import type { FamilyRow, LifecycleFactRow, PartRow, StockLotRow } from "@/seed/tables";

const MAKERS = [
  "Tarnholt Motion",
  "Brindlewick",
  "Corvane",
  "Duskvale",
  "Mossgate",
  "Quillfeather",
  "Pebbleton",
  "Fernsby",
];

/** Classes of every ten families. */
const CLASSES: readonly ItemClass[] = [
  "drive",
  "drive",
  "drive",
  "motor",
  "motor",
  "motor",
  "controller",
  "hmi",
  "power_supply",
  "io",
];

const PARTS_PER_FAMILY = SIZE.parts / SIZE.families;

const familyOf = (part: number): number => Math.floor(part / PARTS_PER_FAMILY);
const makerOf = (family: number): string => MAKERS[family % MAKERS.length] ?? "Corvane";
export const classOf = (part: number): ItemClass => CLASSES[familyOf(part) % CLASSES.length] ?? "drive";

export function largeFamilies(): FamilyRow[] {
  return upTo(SIZE.families).map((family) => ({
    id: numberedId("Family", family),
    maker: makerOf(family),
    name: `Series ${padded(family + 1, 3)}`,
    itemClass: classOf(family * PARTS_PER_FAMILY),
    description: "Invented series",
  }));
}

export function largeParts(): PartRow[] {
  const chance = randomStream(LARGE_SEED, "part");
  return upTo(SIZE.parts).map((part) => ({
    id: numberedId("Part", part),
    maker: makerOf(familyOf(part)),
    number: `XT-${padded(familyOf(part) + 1, 3)}-${padded((part % PARTS_PER_FAMILY) + 1, 3)}`,
    description: `Series ${familyOf(part) + 1}, size ${(part % PARTS_PER_FAMILY) + 1}`,
    itemClass: classOf(part),
    familyId: numberedId("Family", familyOf(part)),
    price: chance.integer(100, 6_000),
    priceCurrency: "EUR",
    pricedOn: "2026-06-01",
    leadWeeks: chance.integer(3, 20),
    leadWeeksP80: chance.integer(21, 40),
    repairYield: chance.integer(4, 9) / 10,
    repairTurnaroundDays: chance.integer(15, 60),
    powerKw: null,
    profileFamily: null,
  }));
}

/** Three in ten families are open, the others ended or end in some year. */
export function largeFacts(): LifecycleFactRow[] {
  const chance = randomStream(LARGE_SEED, "fact");
  return upTo(SIZE.families).map((family) => {
    const year = chance.integer(2014, 2029);
    const isOpen = chance.next() < 0.3;
    return {
      id: numberedId("LifecycleFact", family),
      partId: null,
      familyId: numberedId("Family", family),
      noticeOn: isOpen ? null : `${year - 1}-03-01`,
      lastOrderOn: isOpen ? null : `${year}-06-30`,
      lastShipOn: isOpen ? null : `${year + 1}-06-30`,
      repairUntilOn: isOpen ? null : `${year + 6}-12-31`,
      orderByOn: null,
      source: "Invented list of the large scenario",
      checkedOn: "2026-06-01",
      recordedOn: "2026-06-01",
      evidence: "documented",
    };
  });
}

const STATES: readonly StockState[] = ["usable", "usable", "usable", "usable", "unproven", "on_hold"];

/** Shelves: each part at three sites. */
export function* largeStock(): Generator<StockLotRow> {
  const chance = randomStream(LARGE_SEED, "stock");
  for (let lot = 0; lot < SIZE.stockLots; lot += 1) {
    yield {
      id: numberedId("StockLot", lot),
      siteId: numberedId("Site", chance.integer(0, SIZE.sites - 1)),
      partId: numberedId("Part", lot % SIZE.parts),
      bin: `R${padded(lot, 5)}`,
      revision: "",
      state: chance.pick(STATES),
      quantity: chance.integer(1, 4),
      lastPoweredOn: `${chance.integer(2020, 2025)}-10-01`,
      countedOn: "2026-09-01",
      reservedFor: null,
      note: null,
      evidence: "documented",
    };
  }
}
