import type { StockState } from "@/lib/spares/usableCount";
import type { SiteCode } from "@/seed/scenarios/showcase/sites";

export interface Shelf {
  readonly site: SiteCode;
  readonly key: string;
  readonly state: StockState;
  readonly quantity: number;
  readonly revision?: string;
  readonly lastPoweredOn?: string;
  readonly reservedFor?: string;
  readonly note?: string;
}

// Usable pieces by site: Heron R and Oak of sizes 010, 020, 040, 080.
const USABLE = `
VEL;2 2 1 1;0 1 1 0
OST;16 4 1 1;3 1 1 0
KAR;0 1 1 0;0 0 0 0
PIN;1 2 2 0;0 1 0 0
TAD;0 0 1 0;0 0 0 0
THO;1 1 0 1;0 0 0 0
`;
const SIZES = ["010", "020", "040", "080"];

function usableShelves(text: string): Shelf[] {
  const [site = "", heron = "", oak = ""] = text.split(";");
  return [
    { prefix: "HR", revision: "B2", counts: heron },
    { prefix: "OK", revision: "A2", counts: oak },
  ].flatMap(({ prefix, revision, counts }) =>
    counts.split(" ").flatMap((count, i): Shelf[] => {
      if (count === "0") return [];
      const key = `${prefix}-${SIZES[i]}`;
      return [{ site: site as SiteCode, key, state: "usable", quantity: Number(count), revision }];
    }),
  );
}

const OLD_LEVEL = {
  state: "wrong_revision",
  revision: "A1",
  note: "Level A1 does not start on the firmware of any line here",
} as const;
const NEVER_POWERED = {
  state: "unproven",
  revision: "B1",
  lastPoweredOn: "2016-05-20",
  note: "Never powered since it was bought",
} as const;
const HOLD = { state: "on_hold", revision: "B2", note: "Quality hold after goods receipt" } as const;

/** What is on the books of Heron R and Oak and cannot be used: 27 and 13 pieces. */
const DEDUCTED: readonly Shelf[] = [
  { site: "OST", key: "HR-010", quantity: 6, ...OLD_LEVEL },
  { site: "OST", key: "HR-020", quantity: 2, ...OLD_LEVEL },
  { site: "OST", key: "HR-010", quantity: 4, ...NEVER_POWERED },
  { site: "OST", key: "HR-020", quantity: 2, ...NEVER_POWERED },
  { site: "OST", key: "HR-010", quantity: 3, ...HOLD },
  {
    site: "OST",
    key: "HR-020",
    quantity: 2,
    state: "reserved",
    revision: "B2",
    reservedFor: "Wrap 3 conversion, cancelled",
  },
  { site: "VEL", key: "HR-020", quantity: 1, ...HOLD },
  { site: "VEL", key: "HR-040", quantity: 1, ...OLD_LEVEL },
  { site: "VEL", key: "HR-020", quantity: 1, state: "unproven", revision: "B2" },
  { site: "KAR", key: "HR-020", quantity: 1, state: "unproven", revision: "B2" },
  { site: "PIN", key: "HR-020", quantity: 1, ...OLD_LEVEL },
  { site: "PIN", key: "HR-040", quantity: 1, ...HOLD },
  { site: "PIN", key: "HR-010", quantity: 1, state: "unproven", revision: "C1" },
  { site: "TAD", key: "HR-020", quantity: 1, state: "unproven", revision: "B1" },
  {
    site: "VEL",
    key: "OK-020",
    quantity: 3,
    state: "unproven",
    revision: "A2",
    note: "4 more drives in the cupboard at VEL-03, sizes not written down",
  },
  { site: "VEL", key: "OK-040", quantity: 1, state: "on_hold", revision: "A2" },
  { site: "VEL", key: "OK-010", quantity: 1, state: "wrong_revision", revision: "A1" },
  { site: "OST", key: "OK-020", quantity: 3, state: "unproven", revision: "A2" },
  { site: "OST", key: "OK-010", quantity: 1, state: "on_hold", revision: "B1" },
  { site: "KAR", key: "OK-020", quantity: 1, state: "unproven", revision: "A2" },
  { site: "PIN", key: "OK-040", quantity: 1, state: "unproven", revision: "A2" },
  { site: "PIN", key: "OK-020", quantity: 1, state: "on_hold", revision: "A2" },
  { site: "TAD", key: "OK-020", quantity: 1, state: "unproven", revision: "A1" },
];

/** Shelves of the ring drives as the story tells them: Heron R 66 booked and 39 usable, Oak 21 and 8. */
export const TOLD_SHELVES: readonly Shelf[] = [
  ...USABLE.trim().split("\n").flatMap(usableShelves),
  ...DEDUCTED,
];
