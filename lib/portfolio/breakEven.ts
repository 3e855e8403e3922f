import type { PlanCompanions } from "@/lib/portfolio/planResult";
import type { Candidate } from "@/lib/portfolio/planSlots";
import type { PlanEvaluator } from "@/lib/portfolio/planWorth";

const MOST_DOUBLINGS = 12;
const MOST_STEPS = 40;
const CLOSE = 1e-6;

type Net = (cost: number) => number;

/** Two costs with the root between them; null when it lies beyond any cost looked at. */
function bracket(net: Net, start: number): readonly [number, number] | null {
  let low = 0;
  let high = Math.max(1, start);
  for (let doubled = 0; net(high) < 0; doubled += 1) {
    if (doubled === MOST_DOUBLINGS) return null;
    low = high;
    high *= 2;
  }
  return [low, high];
}

/**
 * Where a function of a cost per hour that rises becomes zero: 0 when it never is below, null when it stays below.
 *
 * All but a straight line: only the way taken round a stop may change with the cost.
 */
export function rootAbove(net: Net, start: number): number | null {
  if (net(0) >= 0) return 0;
  const ends = bracket(net, start);
  if (ends === null) return null;
  let [low, high] = ends;
  for (let step = 0; step < MOST_STEPS && high - low > CLOSE * high; step += 1) {
    const straight = low + ((high - low) * -net(low)) / (net(high) - net(low));
    const middle = step % 3 === 2 ? (low + high) / 2 : straight;
    if (middle <= low) return middle;
    if (net(middle) < 0) low = middle;
    else high = middle;
  }
  return high;
}

/** Cost per hour at which what a line's options bring to the whole group just pays what they cost. */
export function breakEvenOf(
  evaluator: PlanEvaluator,
  chosen: readonly number[],
): PlanCompanions["breakEven"] {
  const lines = new Map(evaluator.staged.input.lines.map((line) => [line.id, line]));
  const funded = [...new Set(chosen.map((index) => (evaluator.candidates[index] as Candidate).line.lineId))];
  const whole = evaluator.worth(chosen).worth;
  return funded.flatMap((lineId) => {
    const costPerHour = lines.get(lineId)?.costPerHour ?? null;
    if (costPerHour === null) return [];
    const isMine = (index: number) => (evaluator.candidates[index] as Candidate).line.lineId === lineId;
    const rest = chosen.filter((index) => !isMine(index));
    const spent = chosen
      .filter(isMine)
      .reduce((sum, i) => sum + (evaluator.money[i]?.spentDiscounted ?? 0), 0);
    const marginalWorth = whole - evaluator.worth(rest).worth;
    const own = (cost: number) =>
      evaluator.lineAt(lineId, rest, cost) - evaluator.lineAt(lineId, chosen, cost);
    const net = (cost: number) => marginalWorth - own(costPerHour) + own(cost) - spent;
    return [{ lineId, costPerHour, atLeast: rootAbove(net, costPerHour), marginalWorth }];
  });
}
