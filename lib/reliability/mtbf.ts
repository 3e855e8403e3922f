import { requireCount, requireNumber, requireOpenShare } from "@/lib/kernel/requireNumber";
import { gammaPoint } from "@/lib/reliability/gammaPoint";

export interface MtbfTest {
  /** Total time on test or in service, any unit, > 0. */
  readonly time: number;
  /** Failures in it, whole and >= 0. */
  readonly failures: number;
  /** Confidence in (0, 1). */
  readonly confidence: number;
  /** 2: both bounds share the risk; 1: each bound stands alone with all of it. */
  readonly sides: 1 | 2;
}

/** A chi-square point is twice a gamma point of half the degrees of freedom. */
const chiSquarePoint = (chance: number, degrees: number) => 2 * gammaPoint(chance, degrees / 2);

/**
 * Mean time between failures of a time-terminated observation at constant rate, with confidence bounds.
 *
 * estimate = T / r; lower = 2T / chi2(1 - risk; 2r + 2); upper = 2T / chi2(risk; 2r); risk = (1 - confidence) / sides.
 *
 * @returns In the unit of `time`; estimate and upper are null without a failure: they do not exist.
 * @throws {RangeError} naming the argument and its value.
 * @see NIST/SEMATECH e-Handbook 8.4.5.1.
 */
export function mtbfBounds({ time, failures, confidence, sides }: MtbfTest) {
  requireNumber(time, "time", { least: 0, open: true });
  requireCount(failures, "failures");
  requireOpenShare(confidence, "confidence");
  if (sides !== 1 && sides !== 2) throw new RangeError(`sides must be 1 or 2, got ${sides}`);
  const risk = (1 - confidence) / sides;
  const some = failures > 0;
  return {
    estimate: some ? time / failures : null,
    lower: (2 * time) / chiSquarePoint(1 - risk, 2 * failures + 2),
    upper: some ? (2 * time) / chiSquarePoint(risk, 2 * failures) : null,
  };
}
