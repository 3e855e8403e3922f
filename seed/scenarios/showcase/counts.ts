import type { CountLineRow, StockCountRow } from "@/seed/countTables";
import { partId } from "@/seed/scenarios/showcase/parts";
import { siteId } from "@/seed/scenarios/showcase/sites";
import { seedId } from "@/seed/seedId";
import type { StockLotRow } from "@/seed/tables";

const SITE = "OST";
const COUNTER = "Technician Ostrowka";
const COUNTER_ID = seedId("User", "technician.ost@halvenor.example");
const POSTED = { reference: "Count 1", bins: "R1" };
const OPEN = { reference: "Count 2", bins: "R3" };

const countId = (reference: string): string => seedId("StockCount", `${SITE}/${reference}`);

const blankLine = {
  ...{ found: null, state: null, tested: null, originUnknown: false, holdReason: "", note: "" },
  ...{ countedBy: "", countedById: null, version: 1 },
} as const;

function lineOf(reference: string, lot: StockLotRow): CountLineRow {
  return {
    id: seedId("CountLine", `${SITE}/${reference}/${lot.id}`),
    countId: countId(reference),
    ...{ lotId: lot.id, partId: lot.partId, plate: "", bin: lot.bin, revision: lot.revision },
    ...{ bookState: lot.state, bookQuantity: lot.quantity, bookPoweredOn: lot.lastPoweredOn },
    ...blankLine,
  };
}

function counted(line: CountLineRow, found: number): CountLineRow {
  const by = { countedBy: COUNTER, countedById: COUNTER_ID, version: 2 };
  return { ...line, found, state: line.bookState, ...by };
}

const lotsIn = (lots: readonly StockLotRow[], bins: string): StockLotRow[] =>
  lots.filter((lot) => lot.siteId === siteId(SITE) && lot.bin.startsWith(bins));

/** The first lot of the posted count had one piece more on the book than was found. */
function postedLines(lots: readonly StockLotRow[]): CountLineRow[] {
  return lotsIn(lots, POSTED.bins).map((lot, i) => {
    const found = lot.quantity ?? 0;
    return { ...counted(lineOf(POSTED.reference, lot), found), bookQuantity: found + (i === 0 ? 1 : 0) };
  });
}

/** What posting did to that lot: it stands now as it was found. */
function postedSteps(lots: readonly StockLotRow[]): string {
  const [lot] = lotsIn(lots, POSTED.bins);
  if (!lot) return JSON.stringify({ lots: [], holds: [] });
  const { state, quantity, lastPoweredOn, countedOn, note } = lot;
  const after = { state, quantity, lastPoweredOn, countedOn, originUnknown: false, testedOn: null, note };
  const step = {
    lotId: lot.id,
    partId: lot.partId,
    before: { ...after, quantity: (quantity ?? 0) + 1 },
    after,
  };
  return JSON.stringify({ lots: [step], holds: [] });
}

/** The count under way: every second lot is written, one of them with a piece missing, and a find nobody had on record. */
function openLines(lots: readonly StockLotRow[]): CountLineRow[] {
  const lines = lotsIn(lots, OPEN.bins).map((lot, i) => {
    const line = lineOf(OPEN.reference, lot);
    const book = lot.quantity ?? 0;
    return i % 2 === 1 ? line : counted(line, i === 2 ? Math.max(0, book - 1) : book);
  });
  const find: CountLineRow = {
    id: seedId("CountLine", `${SITE}/${OPEN.reference}/find`),
    ...{ countId: countId(OPEN.reference), lotId: null, partId: partId("HR-010"), plate: "TM-HR-010" },
    ...{ bin: "R3 floor", revision: "", bookState: null, bookQuantity: null, bookPoweredOn: null },
    ...{ ...blankLine, found: 1, state: "unproven", originUnknown: true, note: "No label of the store" },
    ...{ countedBy: COUNTER, countedById: COUNTER_ID },
  };
  return [...lines, find];
}

const common = { blind: true, openedBy: "Spares planner", limitEuro: 1000 };

/** A count of Ostrowka posted last month and one under way. */
export function stockCountRows(lots: readonly StockLotRow[]): StockCountRow[] {
  const { blind, openedBy, limitEuro } = common;
  return [
    {
      ...{ id: countId(POSTED.reference), siteId: siteId(SITE), ...POSTED, blind, limitEuro },
      ...{ openedOn: "2026-10-26", openedBy, approvedOn: null, approvedBy: null },
      ...{ postedOn: "2026-10-28", postedBy: "Spares planner", steps: postedSteps(lots) },
    },
    {
      ...{ id: countId(OPEN.reference), siteId: siteId(SITE), ...OPEN, blind, limitEuro },
      ...{ openedOn: "2026-11-27", openedBy, approvedOn: null, approvedBy: null },
      ...{ postedOn: null, postedBy: null, steps: null },
    },
  ];
}

export function countLineRows(lots: readonly StockLotRow[]): CountLineRow[] {
  return [...postedLines(lots), ...openLines(lots)];
}
