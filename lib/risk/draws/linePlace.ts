/** Something nobody knows of a line that settling would narrow. */
export interface Unknown {
  /** The cost per hour is inferred or assumed · lots are not counted · a part is not identified. */
  readonly kind: "cost" | "stock" | "part";
  /** Pool it concerns; null for the cost per hour. */
  readonly poolId: string | null;
  /** Sites whose lots are not counted; empty for the others. */
  readonly siteIds: readonly string[];
  /** Median place with the unknown at the 5 % and at the 95 % point of what it may be. */
  readonly placeAtLow: number;
  readonly placeAtHigh: number;
  /** Farthest either lies from the median place now. */
  readonly places: number;
}

/** How a line fares against one of its neighbours in the ranking. */
export interface Neighbour {
  readonly lineId: string;
  readonly side: "above" | "below";
  /** Share of the draws that put the line before the neighbour; equal losses count half. */
  readonly before: number;
}

/** 5 %, 50 % and 95 % points of the draws. */
export interface DrawnSpan {
  readonly low: number;
  readonly mid: number;
  readonly high: number;
}

/** A loss in the draws, EUR a year, with their mean and its standard error. */
export interface LossSpan extends DrawnSpan {
  readonly mean: number;
  readonly error: number;
}

/** How sure the place of a line by loss is. */
export interface LinePlace {
  readonly lineId: string;
  readonly draws: number;
  readonly seed: number;
  readonly place: DrawnSpan;
  /** Chance of being among the first five. */
  readonly firstFive: number;
  readonly stopLoss: LossSpan;
  /** The nearest lines in the ranking, at most two on either side, the highest first. */
  readonly neighbours: readonly Neighbour[];
  /** What is not known, what moves the line farthest first. */
  readonly unknowns: readonly Unknown[];
  /** One unknown alone moves it by `FRAGILE_PLACES` or more. */
  readonly fragile: boolean;
}

/** From so many places on, one unknown makes a place fragile; the product's own choice, no source. */
export const FRAGILE_PLACES = 5;
