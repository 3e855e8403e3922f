import type { LognormalPrior } from "@/lib/reliability/lognormal";
import type { Evidence, ItemClass } from "@/lib/risk/evaluation";
import type { LadderStep } from "@/lib/risk/sourceLadder";
import type { StorageBand } from "@/lib/spares/usableCount";

/** What is believed of a class of items before any own record. */
export interface ClassAssumptions {
  /** Removals per unit-year. */
  readonly removalRate: number;
  /** Weight of that belief, unit-years. */
  readonly rateUnitYears: number;
  /** Share of removed units in which no fault is found; the rest are failures. */
  readonly noFaultFoundShare: number;
  /** Hours to restore with a spare at hand; weight in stops. */
  readonly withSpare: LognormalPrior;
  /** Ways to run again without one, tried in order. */
  readonly ladder: readonly LadderStep[];
  /** Spread of the logarithm of the hours without a spare, and the weight of the ladder in stops. */
  readonly withoutSpare: { readonly sigma: number; readonly weight: number };
  /** Order to receipt, years, when not recorded. */
  readonly leadYears: number;
  /** Chance of working by years since last powered. */
  readonly storage: readonly StorageBand[];
  /** The same when the day of the last power-up is not known. */
  readonly unknownStorageWorks: number;
}

export interface Assumptions {
  readonly classes: Readonly<Record<ItemClass, ClassAssumptions>>;
  /** Hours a spare from another site adds. */
  readonly transferHours: number;
  /** Chance that an unproven, or a removed and untested, piece counts. */
  readonly unprovenWorks: number;
  readonly removedUntestedWorks: number;
  /** Chance that a unit kept at a retrofit passes its test. */
  readonly releaseWorks: number;
  /** Chance that a unit out for repair comes back working when its part has no repair yield. */
  readonly repairWorks: number;
  readonly weights: { readonly stage: number; readonly spares: number; readonly repair: number };
  /** Hours beyond its buffer a line can bear in the score. */
  readonly tolerableBeyondBuffer: number;
  /** Whole months; the score and the yearly loss average the no-spare chance over them. */
  readonly horizonMonths: number;
  /** Months of the no-spare chance that are computed. */
  readonly months: number;
  /** No-spare chance of parts nobody has identified. */
  readonly unidentifiedNoSpare: number;
  /** Chance that a part without dated supply can still be ordered. */
  readonly undatedOrderable: number;
  /** Spread of the logarithm of a cost per hour by how well it is known; draws only. */
  readonly costSpread: Readonly<Record<Evidence, number>>;
  /** Most pieces a stock lot nobody has counted may hold, from 0 up each alike likely; draws only. */
  readonly uncountedMost: number;
  /** What a loss a year from now weighs less than one today; the loss over all years only. */
  readonly discountRate: number;
}

const CAPACITORS: readonly StorageBand[] = [
  { untilYears: 1, works: 0.97 },
  { untilYears: 3, works: 0.93 },
  { untilYears: 6, works: 0.85 },
  { untilYears: null, works: 0.7 },
];
const NO_CAPACITORS: readonly StorageBand[] = [{ untilYears: null, works: 0.97 }];

interface LadderTerms {
  readonly alternate: number;
  readonly market: number;
  readonly marketHours: number;
  readonly rebuildHours: number;
}

function ladder({ alternate, market, marketHours, rebuildHours }: LadderTerms): readonly LadderStep[] {
  return [
    { source: "unlisted spare on site", availability: 0.15, hours: 3 },
    { source: "approved alternate", availability: alternate, hours: 8 },
    { source: "idle machine on site", availability: 0.15, hours: 5 },
    { source: "emergency delivery by the maker", availability: 0.5, hours: 96, needs: "orders" },
    { source: "exchange or repair", availability: 0.6, hours: 120, needs: "repair" },
    { source: "open market", availability: market, hours: marketHours },
    { source: "conversion in an emergency", availability: 1, hours: rebuildHours },
  ];
}

interface ClassTerms extends LadderTerms {
  readonly rate: number;
  readonly noFault: number;
  readonly medianHours: number;
  readonly leadYears: number;
  readonly capacitors: boolean;
}

function classOf(terms: ClassTerms): ClassAssumptions {
  return {
    removalRate: terms.rate,
    rateUnitYears: 50,
    noFaultFoundShare: terms.noFault,
    withSpare: { mu: Math.log(terms.medianHours), sigma: 0.8, weight: 5 },
    ladder: ladder(terms),
    withoutSpare: { sigma: 0.8, weight: 5 },
    leadYears: terms.leadYears,
    storage: terms.capacitors ? CAPACITORS : NO_CAPACITORS,
    unknownStorageWorks: terms.capacitors ? 0.7 : 0.97,
  };
}

/** One row a class: rate · no fault found · median hours with a spare · lead time · ladder. */
const classes: Readonly<Record<ItemClass, ClassAssumptions>> = {
  drive: classOf({
    ...{ rate: 0.04, noFault: 0.3, medianHours: 3.5, leadYears: 0.2, capacitors: true },
    ...{ alternate: 0.2, market: 0.6, marketHours: 72, rebuildHours: 240 },
  }),
  motor: classOf({
    ...{ rate: 0.025, noFault: 0.1, medianHours: 5, leadYears: 0.3, capacitors: false },
    ...{ alternate: 0.2, market: 0.5, marketHours: 72, rebuildHours: 240 },
  }),
  controller: classOf({
    ...{ rate: 0.015, noFault: 0.3, medianHours: 3, leadYears: 0.3, capacitors: false },
    ...{ alternate: 0.1, market: 0.6, marketHours: 72, rebuildHours: 480 },
  }),
  power_supply: classOf({
    ...{ rate: 0.03, noFault: 0.1, medianHours: 1.5, leadYears: 0.1, capacitors: true },
    ...{ alternate: 0.6, market: 0.9, marketHours: 24, rebuildHours: 72 },
  }),
  io: classOf({
    ...{ rate: 0.008, noFault: 0.2, medianHours: 1.5, leadYears: 0.15, capacitors: false },
    ...{ alternate: 0.2, market: 0.7, marketHours: 48, rebuildHours: 240 },
  }),
  hmi: classOf({
    ...{ rate: 0.06, noFault: 0.15, medianHours: 2.5, leadYears: 0.2, capacitors: false },
    ...{ alternate: 0.2, market: 0.6, marketHours: 48, rebuildHours: 168 },
  }),
  converter: classOf({
    ...{ rate: 0.025, noFault: 0.2, medianHours: 2, leadYears: 0.1, capacitors: false },
    ...{ alternate: 0.2, market: 0.7, marketHours: 36, rebuildHours: 120 },
  }),
  network_card: classOf({
    ...{ rate: 0.012, noFault: 0.3, medianHours: 2, leadYears: 0.3, capacitors: false },
    ...{ alternate: 0.1, market: 0.5, marketHours: 72, rebuildHours: 480 },
  }),
};

/** The values used until somebody states better ones. Common practice, no source, all of them. */
export const likelyAssumptions: Assumptions = {
  classes,
  transferHours: 30,
  unprovenWorks: 0,
  removedUntestedWorks: 0,
  releaseWorks: 0.65,
  repairWorks: 0.6,
  weights: { stage: 0.3, spares: 0.4, repair: 0.3 },
  tolerableBeyondBuffer: 8,
  horizonMonths: 12,
  months: 60,
  unidentifiedNoSpare: 0.5,
  undatedOrderable: 0.5,
  costSpread: { measured: 0.05, documented: 0.15, inferred: 0.35, assumed: 0.6 },
  uncountedMost: 4,
  discountRate: 0.08,
};

/** What each assumption is called on the screen and how well it is known. */
export const assumptionNotes: Readonly<
  Record<
    keyof ClassAssumptions | keyof Omit<Assumptions, "classes">,
    { title: string; unit: string; basis: string }
  >
> = {
  removalRate: note("Removal rate of the class", "per unit-year"),
  rateUnitYears: note("Weight of the class rate", "unit-years"),
  noFaultFoundShare: note("Removed units without a fault", "share"),
  withSpare: note("Restoration with a spare at hand", "hours"),
  ladder: note("Sources without a spare", "hours by source"),
  withoutSpare: note("Spread of restoration without a spare", "of ln hours"),
  leadYears: note("Lead time when not recorded", "years"),
  storage: note("Chance of working after storage", "by years unpowered"),
  unknownStorageWorks: note("Chance of working, last power-up not known", "chance"),
  transferHours: note("Way of a spare from another site", "hours"),
  unprovenWorks: note("Unproven pieces that count", "share"),
  removedUntestedWorks: note("Removed, untested pieces that count", "share"),
  releaseWorks: note("Units kept at a retrofit that pass their test", "share"),
  repairWorks: note("Units back from repair that work, yield not recorded", "share"),
  weights: own("Weights of stage, spares and repair", "shares of 1"),
  tolerableBeyondBuffer: own("Tolerable stop beyond the buffer", "hours"),
  horizonMonths: own("Horizon of score and yearly loss", "months"),
  months: own("Months of the no-spare chance", "months"),
  unidentifiedNoSpare: own("No-spare chance of unidentified parts", "chance"),
  undatedOrderable: own("Chance that an undated part can be ordered", "chance"),
  costSpread: note("Spread of the cost per hour by evidence", "of ln EUR"),
  uncountedMost: own("Most pieces in a lot nobody counted", "pieces"),
  discountRate: note("Discount of later losses", "share a year"),
};

function note(title: string, unit: string) {
  return { title, unit, basis: "common practice, no source" };
}

function own(title: string, unit: string) {
  return { title, unit, basis: "own choice of the product, no source" };
}
