import { downtimeSplit, type MeanHours, medianHours, type RecordedStop } from "@/lib/reliability/downtime";
import { type LognormalPrior, lognormalMean, shrinkLognormal } from "@/lib/reliability/lognormal";

/** A recorded event as far as its stop goes. */
export interface StopRecord extends RecordedStop {
  readonly spareAtHand: boolean | null;
  readonly kind: "failure" | "no_fault_found" | "removal";
  /** Why it does not count; null counts. */
  readonly setAside: string | null;
}

/** Stops with a spare at hand, without one, or where nobody wrote it down. */
export interface DowntimeRow {
  readonly spare: "with a spare" | "without a spare" | "not known";
  readonly stops: number;
  readonly median: number | null;
  readonly mean: number | null;
  readonly waiting: MeanHours;
  readonly work: MeanHours;
  /** Belief of the class before any record, hours, and its weight in stops; null where there is none. */
  readonly belief: { readonly hours: number; readonly weight: number } | null;
  /** Mean of the recorded stops pulled to that belief; the belief itself without a stop. */
  readonly pulled: number | null;
}

export interface RestorationBelief {
  readonly withSpare: LognormalPrior | null;
  readonly withoutSpare: LognormalPrior | null;
}

/**
 * Recorded stops split by whether a spare was at hand, and each into waiting and work.
 *
 * What is set aside or stood no hour is left out: a stop of nothing is no stop.
 */
export function downtimeTable(records: readonly StopRecord[], belief: RestorationBelief): DowntimeRow[] {
  const stops = records.filter(
    ({ setAside, downtimeHours }) => setAside === null && (downtimeHours ?? 0) > 0,
  );
  const row = (spare: DowntimeRow["spare"], at: boolean | null, prior: LognormalPrior | null) =>
    rowOf(
      spare,
      stops.filter(({ spareAtHand }) => spareAtHand === at),
      prior,
    );
  const rows = [
    row("with a spare", true, belief.withSpare),
    row("without a spare", false, belief.withoutSpare),
    row("not known", null, null),
  ];
  return rows.filter(({ spare, stops: seen }) => spare !== "not known" || seen > 0);
}

function rowOf(
  spare: DowntimeRow["spare"],
  stops: readonly StopRecord[],
  prior: LognormalPrior | null,
): DowntimeRow {
  const { restoration, waiting, repair } = downtimeSplit(stops);
  const hours = stops.flatMap(({ downtimeHours }) => downtimeHours ?? []);
  return {
    ...{ spare, stops: hours.length, median: medianHours(hours), mean: restoration.hours },
    ...{ waiting, work: repair },
    belief: prior && { hours: lognormalMean(prior), weight: prior.weight },
    pulled: prior && lognormalMean(shrinkLognormal(prior, seenIn(hours))),
  };
}

function seenIn(hours: readonly number[]) {
  const sum = (value: (one: number) => number) => hours.reduce((all, one) => all + value(one), 0);
  return {
    stops: hours.length,
    sumLog: sum(Math.log),
    sumLogSquared: sum((one) => Math.log(one) ** 2),
    sumHours: sum((one) => one),
  };
}
