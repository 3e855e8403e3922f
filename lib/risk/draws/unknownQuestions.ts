import { once, quantile, type Vector, valueAt } from "@/lib/risk/draws/drawing";
import { type DrawnLines, type Fixed, type LineDraws, lossWith, usersOf } from "@/lib/risk/draws/drawLosses";
import type { Unknown } from "@/lib/risk/draws/linePlace";
import { isUnidentified } from "@/lib/risk/poolOutlook";

const LOW = 0.05;
const HIGH = 0.95;

type Losses = ReadonlyMap<string, Vector>;

/** Something not known of a line, and what the lines it concerns would lose were it found at either end. */
export interface Question extends Pick<Unknown, "kind" | "poolId" | "siteIds"> {
  readonly low: Losses;
  readonly high: Losses;
}

export interface Asking {
  readonly group: DrawnLines;
  readonly losses: Losses;
  /** How many of the draws are asked of: the first, so that they are common to all. */
  readonly draws: number;
}

const isOpenCost = ({ line }: LineDraws) =>
  line.costEvidence === "inferred" || line.costEvidence === "assumed";

function ownLoss(drawn: LineDraws, { losses, draws }: Asking): Vector {
  const own = losses.get(drawn.line.id);
  if (!own) throw new RangeError(`lineId must be a drawn line, got ${drawn.line.id}`);
  return own.subarray(0, draws);
}

function costQuestion(drawn: LineDraws, asking: Asking): Question[] {
  if (!isOpenCost(drawn)) return [];
  const own = ownLoss(drawn, asking);
  const at = (p: number): Losses => {
    const fixed = quantile(drawn.costFactor, p);
    return new Map([[drawn.line.id, own.map((loss, i) => (loss / valueAt(drawn.costFactor, i)) * fixed)]]);
  };
  return [{ kind: "cost", poolId: null, siteIds: [], low: at(LOW), high: at(HIGH) }];
}

/** What a line loses with one no-spare chance set to something else. */
function settled(drawn: LineDraws, asking: Asking, fixed: Fixed): [string, Vector] {
  return [drawn.line.id, lossWith(drawn, ownLoss(drawn, asking), fixed)];
}

function partQuestions(drawn: LineDraws, asking: Asking): Question[] {
  return drawn.pools
    .filter(({ poolId }) => isUnidentified(poolId))
    .map(({ poolId, noSpare }) => {
      const at = (p: number): Losses => {
        const fixed = new Float64Array(noSpare.length).fill(quantile(noSpare, p));
        return new Map([settled(drawn, asking, { poolId, noSpare: fixed })]);
      };
      return { kind: "part", poolId, siteIds: [], low: at(LOW), high: at(HIGH) };
    });
}

/** What is not known of each line. Lots nobody counted are found empty or at their most, by all lines that share them. */
export function unknownQuestions(asking: Asking): (drawn: LineDraws) => readonly Question[] {
  const { group } = asking;
  const asked = once<Question>();
  const stockQuestions = ({ pools }: LineDraws): Question[] =>
    pools.flatMap(({ poolId, uncounted }) => {
      if (!uncounted) return [];
      const at = (noSpare: Vector): Losses =>
        new Map(usersOf(group, poolId).map((drawn) => settled(drawn, asking, { poolId, noSpare })));
      const { siteIds, atNone, atMost } = uncounted;
      return asked(poolId, () => ({ kind: "stock", poolId, siteIds, low: at(atNone), high: at(atMost) }));
    });
  return (drawn) => [
    ...costQuestion(drawn, asking),
    ...stockQuestions(drawn),
    ...partQuestions(drawn, asking),
  ];
}
