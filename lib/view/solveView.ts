import type { PlanCompanions, PlanConflict, SolvedPlan } from "@/lib/portfolio/planResult";
import { money } from "@/lib/view/format";
import { type LimitNames, limitAmount, limitWords, quarterWords } from "@/lib/view/limitWords";
import { plainNumber } from "@/lib/view/number";
import type { BoardView } from "@/lib/view/planBoard";
import { roundTicks, type SpanChart } from "@/lib/view/spanChart";

/** What ids are called, by what a board shows. */
export function boardNames({ lines, inputs }: Pick<BoardView, "lines" | "inputs">): LimitNames {
  const ways = lines.flatMap((line) => line.ways);
  const slots = ways.flatMap((way) => way.slots);
  const of = (pairs: readonly (readonly [string, string])[]) => {
    const map = new Map(pairs);
    return (id: string) => map.get(id) ?? quarterWords(id);
  };
  return {
    site: of(inputs.sites.map(({ id, code }) => [id, code])),
    line: of(lines.map(({ lineId, code }) => [lineId, code])),
    option: of(ways.map(({ id, name }) => [id, name])),
    slot: of(slots.map(({ id, name }) => [id, name])),
  };
}

/** Why nothing keeps within the limits, and the least that would do, in words. */
export function conflictWords({ clash, relax }: PlanConflict, names: LimitNames) {
  return {
    clash: clash.map((limit) => limitWords(limit, names)),
    relax:
      relax === null
        ? null
        : relax.map((one) =>
            one.unit === "choices"
              ? `Give up: ${limitWords(one.limit, names)}`
              : `${limitWords(one.limit, names)}: ${limitAmount(one.by, one.unit)} more`,
          ),
  };
}

/** What of a plan found is proven and what is not, in plain words. */
export function provenWords({ model, worth, worthPerEuro = 1 }: SolvedPlan): string[] {
  const less = worthPerEuro === 0 ? "" : ` after ${plainNumber(worthPerEuro, 2)} € for each € spent`;
  return [
    `Proven: in the linear model no plan brings more than ${money(model.bound)}${less}, and the model's own best brings ${money(model.objective)} there; between them lies the gap of ${plainNumber(model.gap * 100, 2)} %.`,
    `Not proven: that no plan is truly worth more. The model counts units that leave as if the shelf stayed as empty as it is without a plan, so it promises too much; by the evaluation of the whole group this plan brings ${money(worth.worth - worthPerEuro * worth.spentDiscounted)}${less}, the most of all plans the search met.`,
  ];
}

/** Worth against money: what all budgets at a share of what they are would bring. */
export function curveChart({ curve }: PlanCompanions): SpanChart {
  const points = [...curve].sort((a, b) => a.spent - b.spent);
  const most = Math.max(0, ...points.map(({ worth }) => worth)) / 1000;
  const ticks = roundTicks(most);
  const now = points.find(({ budgetShare }) => budgetShare === 1);
  const label = (spent: number) => `${Math.round(spent / 1000)}`;
  return {
    ...{ title: "Less loss by money spent", xLabel: "Spent, k€", unit: "k€", bandName: null },
    lines: [{ key: "worth", name: "Less loss over the horizon", look: "main" }],
    points: points.map(({ spent, worth }) => ({
      label: label(spent),
      band: null,
      values: { worth: worth / 1000 },
    })),
    ...{ domain: [0, ticks.at(-1) ?? 1], ticks },
    marks: now ? [{ at: label(now.spent), label: "today's budgets" }] : [],
  };
}
