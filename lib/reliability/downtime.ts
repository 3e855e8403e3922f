import { requireNumber } from "@/lib/kernel/requireNumber";

/** One stop as recorded; null is not known. */
export interface RecordedStop {
  /** Loss of function to restoration, hours. */
  readonly downtimeHours: number | null;
  /** Part of it spent waiting for an item, hours. */
  readonly logisticHours: number | null;
}

/** A mean and the stops behind it. */
export interface MeanHours {
  /** Null when no stop tells. */
  readonly hours: number | null;
  readonly stops: number;
}

export interface DowntimeSplit {
  /** Mean time to restoration, waiting included (IEC 60050-192, MTTR). */
  readonly restoration: MeanHours;
  /** Mean of the waiting, and of the rest (mean repair time, MRT), over the stops that tell both: these two add up. */
  readonly waiting: MeanHours;
  readonly repair: MeanHours;
}

function meanOf(hours: readonly number[]): MeanHours {
  const sum = hours.reduce((total, value) => total + value, 0);
  return { hours: hours.length === 0 ? null : sum / hours.length, stops: hours.length };
}

/** The middle of the hours, of the two middle ones their mean; null without any. It does not follow one very long stop. */
export function medianHours(hours: readonly number[]): number | null {
  const sorted = [...hours].sort((a, b) => a - b);
  const upper = sorted[Math.floor(sorted.length / 2)];
  const lower = sorted[Math.floor((sorted.length - 1) / 2)];
  return upper === undefined || lower === undefined ? null : (lower + upper) / 2;
}

/**
 * Splits the mean stop into waiting for an item and work; the two are never merged into one "repair time".
 *
 * repair = downtime - waiting, stop by stop. A stop whose waiting is not recorded counts in the restoration only: not
 * recorded is not zero.
 *
 * @throws {RangeError} naming the argument and its value, also when the waiting is longer than the stop.
 * @see IEC 60050-192 and EN 13306 for the terms (from memory).
 */
export function downtimeSplit(stops: readonly RecordedStop[]): DowntimeSplit {
  const whole: number[] = [];
  const waiting: number[] = [];
  const repair: number[] = [];
  for (const { downtimeHours, logisticHours } of stops) {
    if (logisticHours !== null) requireNumber(logisticHours, "logisticHours", { least: 0 });
    if (downtimeHours === null) continue;
    whole.push(requireNumber(downtimeHours, "downtimeHours", { least: logisticHours ?? 0 }));
    if (logisticHours === null) continue;
    waiting.push(logisticHours);
    repair.push(downtimeHours - logisticHours);
  }
  return { restoration: meanOf(whole), waiting: meanOf(waiting), repair: meanOf(repair) };
}
