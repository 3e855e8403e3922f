import type { Timing } from "@/test/bench/loadRun";

/** What a kind of request came to. Times in ms. */
export interface KindFigures {
  readonly kind: string;
  readonly count: number;
  readonly errors: number;
  readonly p50: number;
  readonly p95: number;
  readonly p99: number;
  readonly slowest: number;
  /** Median of what went over the wire. */
  readonly kilobytes: number;
}

/** The value that so large a share of the sorted values does not exceed, nearest rank. */
export function quantile(sorted: readonly number[], share: number): number {
  return sorted[Math.max(0, Math.ceil(share * sorted.length) - 1)] ?? Number.NaN;
}

export function figuresOf(timings: readonly Timing[], kinds: readonly string[]): KindFigures[] {
  return kinds.map((kind) => {
    const own = timings.filter((timing) => timing.kind === kind);
    const times = own.map(({ ms }) => ms).sort((a, b) => a - b);
    const sizes = own.map(({ bytes }) => bytes).sort((a, b) => a - b);
    return {
      ...{ kind, count: own.length, errors: own.filter(({ error }) => error !== null).length },
      ...{ p50: quantile(times, 0.5), p95: quantile(times, 0.95), p99: quantile(times, 0.99) },
      ...{ slowest: times.at(-1) ?? Number.NaN, kilobytes: quantile(sizes, 0.5) / 1000 },
    };
  });
}

const HEAD = [
  "request",
  "count",
  "errors",
  "p50",
  "p95",
  "p99",
  "slowest",
  "over the wire",
  "p95 to the floor's",
];

/** A table in Markdown; the first kind is the floor. */
export function tableOf(figures: readonly KindFigures[]): string {
  const floor = figures[0]?.p95 ?? Number.NaN;
  const ms = (value: number) => `${value.toFixed(0)} ms`;
  const rows = figures.map((row) => [
    ...[row.kind, String(row.count), String(row.errors), ms(row.p50), ms(row.p95), ms(row.p99)],
    ...[ms(row.slowest), `${row.kilobytes.toFixed(1)} kB`, (row.p95 / floor).toFixed(2)],
  ]);
  return [HEAD, HEAD.map(() => "---"), ...rows].map((cells) => `| ${cells.join(" | ")} |`).join("\n");
}
