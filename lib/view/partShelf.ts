import { addMonths, type IsoDate } from "@/lib/kernel/isoDate";
import { classAgesOnShelf } from "@/lib/risk/assumptionSets";
import type { Deduction, ItemClass } from "@/lib/risk/evaluation";
import type { StockState } from "@/lib/spares/usableCount";
import { quantity, significant } from "@/lib/view/number";
import type { PartLot } from "@/lib/view/partDossier";
import { distance } from "@/lib/view/time";

const STATES = {
  usable: { name: "Usable", caution: null },
  unproven: { name: "Unproven", caution: "Never proved to work: test before it goes into a line." },
  removed_untested: {
    name: "Removed, untested",
    caution: "Came out of a machine and was not tested: test before it goes into a line.",
  },
  reserved: { name: "Reserved", caution: "Reserved: ask before you take it." },
  on_hold: { name: "On hold", caution: "On hold: ask who holds it before you take it." },
  wrong_revision: {
    name: "Wrong revision",
    caution: "Wrong revision: will not run in at least some of the places here.",
  },
  beyond_repair: { name: "Beyond repair", caution: "Beyond repair: do not fit." },
} as const satisfies Record<StockState, { name: string; caution: string | null }>;

const STATE_ORDER = Object.keys(STATES) as readonly StockState[];

/** The states a lot may have, from ready to useless. */
export const stockStates: readonly { readonly value: StockState; readonly label: string }[] = STATE_ORDER.map(
  (value) => ({ value, label: STATES[value].name }),
);

/** What a state of stock is called. */
export function stockStateName(state: StockState): string {
  return STATES[state].name;
}

const REASONS: Readonly<Record<Deduction["reason"], string>> = {
  usable: "usable",
  unproven: "unproven",
  removed_untested: "removed, untested",
  reserved: "reserved",
  on_hold: "on hold",
  wrong_revision: "wrong revision",
  beyond_repair: "beyond repair",
  storage: "chance lost in storage",
  not_counted: "not counted",
};

/** What a deduction is for, in words. */
export function deductionReason(reason: Deduction["reason"]): string {
  return REASONS[reason];
}

/** A deduction in words: `8 wrong revision`, `a lot not counted`. */
export function deductionText({ reason, pieces }: Deduction): string {
  if (reason === "not_counted") return "a lot not counted";
  // A chance takes off parts of a piece; a small part never reads as none.
  return `${pieces < 0.1 ? significant(pieces, 1) : quantity(pieces)} ${REASONS[reason]}`;
}

/** The lots with something on the shelf, or not counted: what can be fitted now first, then by chance of working. */
export function whoHasOne(lots: readonly PartLot[]): PartLot[] {
  const place = (lot: PartLot) => STATE_ORDER.indexOf(lot.state);
  return lots
    .filter((lot) => lot.quantity !== 0)
    .sort(
      (a, b) =>
        place(a) - place(b) ||
        Number(a.quantity === null) - Number(b.quantity === null) ||
        b.works - a.works ||
        (a.siteCode < b.siteCode ? -1 : 1),
    );
}

/** Unpowered for longer than this asks for care at power-up; the first step of the storage chance. */
const CARE_AFTER_MONTHS = 12;

/** Whether a lot of an item that ages has lain unpowered for a year, or nobody knows. */
export function needsPowerUpCare(lot: PartLot, itemClass: ItemClass, asOf: IsoDate): boolean {
  if (!classAgesOnShelf(itemClass)) return false;
  return lot.lastPoweredOn === null || addMonths(lot.lastPoweredOn, CARE_AFTER_MONTHS) < asOf;
}

/** What to heed before a lot is fitted, the state first. */
export function lotCautions(lot: PartLot, itemClass: ItemClass, asOf: IsoDate): string[] {
  const cautions: string[] = [];
  const { caution } = STATES[lot.state];
  if (caution !== null) cautions.push(caution);
  if (lot.reservedFor !== null) cautions.push(`Reserved for ${lot.reservedFor}.`);
  if (lot.quantity === null) cautions.push("Not counted: there may be none.");
  if (needsPowerUpCare(lot, itemClass, asOf)) cautions.push(careText(lot, asOf));
  if (lot.note !== null) cautions.push(`${lot.note}.`.replace(/\.\.$/, "."));
  return cautions;
}

function careText({ lastPoweredOn }: PartLot, asOf: IsoDate): string {
  return lastPoweredOn === null
    ? "Last power-up not known: care at power-up."
    : `Last powered ${distance(lastPoweredOn, asOf)}: care at power-up.`;
}
