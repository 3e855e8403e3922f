import type { SupplyStage } from "@/lib/lifecycle/supplyStage";

/** What the screen shows of a supply stage. */
export interface StageView {
  /** One letter, `C!` for a closing window. */
  readonly letter: string;
  /** How full the badge is drawn, 0 empty to 5 full; null is drawn dashed. */
  readonly step: 0 | 1 | 2 | 3 | 4 | 5 | null;
  readonly name: string;
  /** What it means for the buyer. */
  readonly sentence: string;
  /** The word of IEC 62402 for it (from memory); null where it has none. */
  readonly standardWord: string | null;
}

const VIEWS = {
  undated: {
    letter: "U",
    step: null,
    name: "Undated",
    sentence: "No source for its dates, or none read in the last 24 months.",
    standardWord: null,
  },
  open: {
    letter: "A",
    step: 0,
    name: "Open supply",
    sentence: "Can be ordered; no discontinuance notice is known.",
    standardWord: null,
  },
  notice: {
    letter: "B",
    step: 1,
    name: "Notice in hand",
    sentence: "Discontinuance is announced; the last order is more than 12 months off or not told.",
    standardWord: "obsolescent",
  },
  "buy-window": {
    letter: "C",
    step: 2,
    name: "Buy window",
    sentence: "The last order is due within 12 months and there is still time to place it.",
    standardWord: "obsolescent",
  },
  closing: {
    letter: "C!",
    step: 2,
    name: "Buy window closing",
    sentence: "The own order-by day has passed; the maker still takes orders.",
    standardWord: "obsolescent",
  },
  "orders-shut": {
    letter: "D",
    step: 3,
    name: "Orders shut",
    sentence: "No new orders are taken; what was ordered still ships.",
    standardWord: "obsolete",
  },
  "repair-fed": {
    letter: "E",
    step: 4,
    name: "Repair-fed",
    sentence: "No longer shipped; only repair brings a unit back.",
    standardWord: "obsolete",
  },
  "own-stock": {
    letter: "F",
    step: 5,
    name: "Own stock",
    sentence: "Neither shipped nor repaired; only what is on the own shelf remains.",
    standardWord: "obsolete",
  },
} as const satisfies Record<SupplyStage, StageView>;

/** Letter, name and meaning of a supply stage. */
export function stageView(stage: SupplyStage): StageView {
  return VIEWS[stage];
}

/** What the stage badge needs, to spread into it. */
export function stageBadge(stage: SupplyStage): Pick<StageView, "letter" | "step"> & { text: string } {
  const { letter, step, name } = VIEWS[stage];
  return { letter, step, text: name };
}

/** Place of a stage from easiest to hardest supply, for sorting; undated sorts first. */
export function stageOrder(stage: SupplyStage): number {
  return Object.keys(VIEWS).indexOf(stage);
}
