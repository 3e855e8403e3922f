/** One place on the horizontal axis; null is a gap, never zero. */
export interface ChartPoint {
  readonly label: string;
  /** Bounds of the band at this place. */
  readonly band: readonly [number, number] | null;
  /** Line key to value. */
  readonly values: Readonly<Record<string, number | null>>;
}

export interface ChartLine {
  readonly key: string;
  readonly name: string;
  readonly look: "main" | "second" | "third";
}

/** A finished chart: what to draw, in which unit, on which scale. Nothing is computed while drawing. */
export interface SpanChart {
  readonly title: string;
  readonly xLabel: string;
  /** Unit of all values, e.g. `% chance`, `k€`. */
  readonly unit: string;
  /** What the band covers, e.g. `5 % to 95 %`; null draws none. */
  readonly bandName: string | null;
  readonly lines: readonly ChartLine[];
  readonly points: readonly ChartPoint[];
  readonly domain: readonly [number, number];
  readonly ticks: readonly number[];
  /** Upright rules at a point's label, e.g. today or a last order. */
  readonly marks: readonly { readonly at: string; readonly label: string }[];
}

/** Round steps that cover 0 to a value in four to six ticks: 1, 2 or 5 times a power of ten. */
export function roundTicks(highest: number): number[] {
  if (!(highest > 0)) return [0, 1];
  const raw = highest / 5;
  const power = 10 ** Math.floor(Math.log10(raw));
  const step = power * ([1, 2, 5, 10].find((factor) => factor * power >= raw * (1 - 1e-9)) ?? 10);
  const steps = Math.ceil(highest / step - 1e-9);
  return Array.from({ length: steps + 1 }, (_, index) => Number((index * step).toPrecision(12)));
}
