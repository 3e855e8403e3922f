import type { LineResult } from "@/lib/risk/evaluation";
import { isUnidentified } from "@/lib/risk/poolOutlook";

/** A line with what the evaluation gave of it. */
export interface WeighedLine {
  readonly siteId: string;
  readonly result: Pick<LineResult, "lineId" | "stopLoss" | "pools">;
}

/** What a gap at one site bears on: lines by id, or parts by pool id. */
export interface BearsOn {
  readonly siteId: string;
  readonly of: "line" | "part";
  readonly ids: ReadonlySet<string>;
}

/** What of the yearly loss hangs on a gap, EUR a year. */
export interface GapEffect {
  /** Loss of the lines or parts concerned: it is worked out with what is poor. */
  readonly rests: number;
  /** The same, of the loss of all lines given; null where no line has a loss. */
  readonly share: number | null;
  /**
   * What of it would go were everything unknown of these parts found at its best: a ceiling, as other gaps of the same
   * parts have a part in it. Null where the gap is nothing the evaluation takes as unknown.
   */
  readonly unknown: number | null;
}

/** The loss of all lines, EUR a year; those without a cost per hour bring nothing. */
export function lossOfLines(lines: readonly WeighedLine[]): number {
  return lines.reduce((sum, { result }) => sum + (result.stopLoss?.mean ?? 0), 0);
}

/**
 * What of the loss of the lines hangs on gaps at some sites; a line or part two of them name counts once.
 *
 * A part counts on every line it stands on, wherever its gap is; places nobody read count at their own site only.
 *
 * @param asUnknown Whether the evaluation takes what is missing as unknown.
 */
export function gapEffect(
  lines: readonly WeighedLine[],
  gaps: readonly BearsOn[],
  asUnknown: boolean,
): GapEffect {
  const lineIds = new Set(gaps.flatMap(({ of, ids }) => (of === "line" ? [...ids] : [])));
  const isMeant = poolTest(gaps);
  const whole = lines.filter(({ result }) => lineIds.has(result.lineId));
  const pools = lines.flatMap(({ siteId, result }) =>
    result.pools.filter(({ poolId }) => isMeant(siteId, poolId)),
  );
  const rests =
    lossOfLines(whole) +
    sum(pools.map(({ baseLoss, shortageLoss }) => (baseLoss ?? 0) + (shortageLoss ?? 0)));
  const all = lossOfLines(lines);
  const unknown = asUnknown ? sum(pools.map(({ unknownLoss }) => unknownLoss ?? 0)) : null;
  return { rests, share: all > 0 ? rests / all : null, unknown };
}

const sum = (values: readonly number[]) => values.reduce((total, one) => total + one, 0);

function poolTest(gaps: readonly BearsOn[]): (siteId: string, poolId: string) => boolean {
  const parts = gaps.filter(({ of }) => of === "part");
  const anywhere = new Set(parts.flatMap(({ ids }) => [...ids]));
  const here = new Set(parts.flatMap(({ siteId, ids }) => [...ids].map((id) => `${siteId} ${id}`)));
  return (siteId, poolId) =>
    isUnidentified(poolId) ? here.has(`${siteId} ${poolId}`) : anywhere.has(poolId);
}
