import type { GroupResult, Span } from "@/lib/risk/evaluation";
import { evaluateWay } from "@/lib/risk/moved/evaluateWay";
import { MOVED_STEPS, type MovedStep, type SnapshotInput } from "@/lib/risk/moved/snapshotInput";

/** Change of stop loss by step, whole EUR a year. */
export type MovedSteps = Readonly<Record<MovedStep, number>>;

export interface MovedLine {
  readonly lineId: string;
  readonly code: string;
  readonly siteId: string;
  /** EUR a year; null is not known, or the line was not there. */
  readonly before: Span | null;
  readonly after: Span | null;
  readonly isNew: boolean;
  readonly isGone: boolean;
  readonly steps: MovedSteps;
  /** Sum of the steps. */
  readonly change: number;
}

/** Sums over lines, whole EUR a year. */
export interface MovedTotal {
  readonly before: number;
  readonly after: number;
  readonly steps: MovedSteps;
  readonly change: number;
}

export interface Moved {
  readonly lines: readonly MovedLine[];
  readonly total: MovedTotal;
  /** The two evaluations at the ends of the way. */
  readonly results: { readonly before: GroupResult; readonly after: GroupResult };
}

/**
 * Says what moved the stop loss of each line between two snapshots: the inputs are changed group by group in a fixed
 * order, and a step is the difference it makes.
 *
 * step k = loss after changing groups 1 … k − loss after changing groups 1 … k − 1, EUR a year. Each loss is rounded to
 * whole euros before differences are taken, so that all sums are of integers: the steps add up to the change, and the
 * lines to the group, exactly and as printed. A loss that is not known counts as nothing in sums, as it does in the
 * group's own sum. The order matters where groups work on each other: what a fresh removal costs depends on the stock.
 * The order itself is a choice of this product.
 *
 * @throws {RangeError} naming the argument and its value, from the evaluation.
 */
export function whatMoved(before: SnapshotInput, after: SnapshotInput): Moved {
  const chain = evaluateWay(before, after);
  const losses = chain.map(lossByLine);
  const [first, last] = [spanByLine(chain[0]), spanByLine(chain.at(-1))];
  const lines = linesOf(before, after).map((line): MovedLine => {
    const values = losses.map((loss) => loss.get(line.lineId) ?? 0);
    const [was, is] = [first.get(line.lineId), last.get(line.lineId)];
    return {
      ...line,
      before: was ?? null,
      after: is ?? null,
      isNew: was === undefined,
      isGone: is === undefined,
      ...changesOf(values),
    };
  });
  return {
    lines,
    total: sumMoved(lines),
    results: { before: chain[0] as GroupResult, after: chain.at(-1) as GroupResult },
  };
}

/** Sums lines, or some of them, to the last euro. */
export function sumMoved(lines: readonly MovedLine[]): MovedTotal {
  const sum = (value: (line: MovedLine) => number) => lines.reduce((total, line) => total + value(line), 0);
  return {
    before: sum((line) => whole(line.before)),
    after: sum((line) => whole(line.after)),
    steps: stepsOf((step) => sum((line) => line.steps[step])),
    change: sum((line) => line.change),
  };
}

/** Whole euros of a loss; -0 does not occur, since losses are not negative. */
function whole(span: Span | null): number {
  return span === null ? 0 : Math.round(span.mean);
}

function lossByLine({ lines }: GroupResult): Map<string, number> {
  return new Map(lines.map(({ lineId, stopLoss }) => [lineId, whole(stopLoss)]));
}

function spanByLine(result: GroupResult | undefined): Map<string, Span | null> {
  return new Map(result?.lines.map(({ lineId, stopLoss }) => [lineId, stopLoss]));
}

/** Lines of either snapshot, the later one's first, as it names and places them. */
function linesOf(before: SnapshotInput, after: SnapshotInput) {
  const later = new Set(after.input.lines.map(({ id }) => id));
  const gone = before.input.lines.filter(({ id }) => !later.has(id));
  return [...after.input.lines, ...gone].map(({ id, code, siteId }) => ({ lineId: id, code, siteId }));
}

function changesOf(values: readonly number[]): { readonly steps: MovedSteps; readonly change: number } {
  const at = (place: number) => values[place] ?? 0;
  const steps = stepsOf((_, place) => at(place + 1) - at(place));
  return { steps, change: at(MOVED_STEPS.length) - at(0) };
}

function stepsOf(value: (step: MovedStep, place: number) => number): MovedSteps {
  return Object.fromEntries(MOVED_STEPS.map((step, place) => [step, value(step, place)])) as Record<
    MovedStep,
    number
  >;
}
