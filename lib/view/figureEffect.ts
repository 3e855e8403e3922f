import type { LineResult, Span } from "@/lib/risk/evaluation";

type Loss = Pick<LineResult, "lineId" | "stopLoss">;

/** The lines of one evaluation a person may see. */
export interface SeenLines {
  readonly lines: readonly { readonly id: string; readonly code: string }[];
  readonly results: readonly Loss[];
}

/** Stop loss a year of the lines whose loss is known, EUR. */
export interface GroupLoss {
  readonly loss: Span;
  readonly lines: number;
  /** Lines without money: their cost per hour is not known. */
  readonly unknown: number;
}

/** A line before and after; null where it was not, or its loss is not known. Places count among the lines seen, from 1. */
export interface LineEffect {
  readonly code: string;
  readonly before: Span | null;
  readonly after: Span | null;
  readonly placeBefore: number | null;
  readonly placeAfter: number | null;
}

/** What a change would do to the figures. */
export interface FigureEffect {
  readonly before: GroupLoss;
  readonly after: GroupLoss;
  /** Lines whose loss or place moves, the largest move of money first. */
  readonly moved: readonly LineEffect[];
  readonly movedCount: number;
}

const LINES_SHOWN = 12;
/** EUR a year; less is rounding of the figures. */
const LEAST_MOVE = 1;

/** Compares two evaluations of the same group, line by line. */
export function figureEffect(before: SeenLines, after: SeenLines): FigureEffect {
  const [old, now] = [byCode(before), byCode(after)];
  const codes = [...new Set([...old.keys(), ...now.keys()])].sort();
  const moved = codes
    .map((code): LineEffect => {
      const [one, other] = [old.get(code), now.get(code)];
      return {
        ...{ code, before: one?.loss ?? null, after: other?.loss ?? null },
        ...{ placeBefore: one?.place ?? null, placeAfter: other?.place ?? null },
      };
    })
    .filter(isMoved)
    .sort((a, b) => moveOf(b) - moveOf(a));
  return {
    before: groupLoss(before),
    after: groupLoss(after),
    moved: moved.slice(0, LINES_SHOWN),
    movedCount: moved.length,
  };
}

function groupLoss({ results }: SeenLines): GroupLoss {
  const known = results.flatMap(({ stopLoss }) => stopLoss ?? []);
  const sum = (end: keyof Span) => known.reduce((total, loss) => total + loss[end], 0);
  return {
    loss: { mean: sum("mean"), low: sum("low"), high: sum("high") },
    lines: results.length,
    unknown: results.length - known.length,
  };
}

function byCode({ lines, results }: SeenLines) {
  const codes = new Map(lines.map(({ id, code }) => [id, code]));
  const known = results.filter(({ stopLoss }) => stopLoss !== null);
  const sorted = [...known].sort((a, b) => (b.stopLoss?.mean ?? 0) - (a.stopLoss?.mean ?? 0));
  const places = new Map(sorted.map(({ lineId }, index) => [lineId, index + 1]));
  return new Map(
    results.map(({ lineId, stopLoss }) => [
      codes.get(lineId) ?? lineId,
      { loss: stopLoss, place: places.get(lineId) ?? null },
    ]),
  );
}

function isMoved(line: LineEffect): boolean {
  return moveOf(line) >= LEAST_MOVE || line.placeBefore !== line.placeAfter;
}

/** A line that comes to be known, or is no more, moves by the whole of its loss. */
function moveOf({ before, after }: LineEffect): number {
  return Math.abs((after?.mean ?? 0) - (before?.mean ?? 0));
}
