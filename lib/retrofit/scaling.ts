export type ScalingInput = {
  readonly countsPerRev: number;
  readonly motorRevs: number;
  readonly loadRevs: number;
  readonly unitsPerLoadRev: number;
};

/**
 * Counts the controller sees for one unit of travel of the load.
 *
 * counts per unit = countsPerRev * motorRevs / (loadRevs * unitsPerLoadRev)
 *
 * @param input Feedback counts per motor revolution; gearing as motorRevs : loadRevs; travel (mm, degree …) per load revolution. All finite and > 0.
 * @returns Counts per unit of travel, > 0.
 * @throws {RangeError} naming the argument and its value.
 */
export function countsPerUnit(input: ScalingInput): number {
  for (const [name, value] of Object.entries(input)) {
    if (!(Number.isFinite(value) && value > 0))
      throw new RangeError(`${name} must be finite and > 0, got ${value}`);
  }
  return (input.countsPerRev * input.motorRevs) / (input.loadRevs * input.unitsPerLoadRev);
}

/** The figures of a scaling as a survey leaves them; null is not known. */
export type RecordedScaling = { readonly [Figure in keyof ScalingInput]: number | null };

/** `countsPerUnit` of a record; null where a figure is missing or not above zero. */
export function recordedCountsPerUnit(record: RecordedScaling): number | null {
  const { countsPerRev, motorRevs, loadRevs, unitsPerLoadRev } = record;
  const isFigure = (value: number | null): value is number => value !== null && value > 0;
  if (!isFigure(countsPerRev) || !isFigure(motorRevs) || !isFigure(loadRevs) || !isFigure(unitsPerLoadRev))
    return null;
  return countsPerUnit({ countsPerRev, motorRevs, loadRevs, unitsPerLoadRev });
}
