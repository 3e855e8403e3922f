import "server-only";
import type { z } from "zod";
import type { Actor } from "@/lib/access/actor";
import { readAsOf } from "@/lib/data/asOf";
import { database } from "@/lib/data/client";
import { readDrawnTotals } from "@/lib/data/drawnTotals";
import { currentEvaluation } from "@/lib/data/group/currentEvaluation";
import { atAskedSite, inOrder, type SliceAsked } from "@/lib/data/interface/slice";
import { decimalOrNull, moneyOrNull } from "@/lib/data/interface/written";
import type { evaluation, line } from "@/lib/interface/shapes/places";
import type { LinePlace, LossSpan } from "@/lib/risk/draws/linePlace";
import type { LineResult } from "@/lib/risk/evaluation";
import { drawnLoss } from "@/lib/view/linePlace";

type Figures = z.output<typeof line>["figures"];

/** Lines of the sites the actor reads, with what the evaluation of the installation's day says of them. */
export async function sliceLines(actor: Actor, asked: SliceAsked): Promise<z.output<typeof line>[]> {
  const { id: evaluationId } = await currentEvaluation(await readAsOf(actor, undefined));
  const { where, ...order } = inOrder(asked);
  const rows = await database().line.findMany({
    where: { ...where, ...atAskedSite(actor, asked) },
    ...order,
    include: {
      site: { select: { currency: true } },
      evaluations: {
        where: { evaluationId },
        select: { rankByLoss: true, rankByScore: true, result: true, place: true },
      },
    },
  });
  return rows.map(({ evaluations: [evaluated], ...row }) => {
    const { id, siteId, code, name, inServiceYear, shiftsPerWeek, costEvidence } = row;
    return {
      ...{ id, siteId, code, name, inServiceYear, shiftsPerWeek, costEvidence },
      costPerHour: moneyOrNull(row.costPerHour, row.site.currency),
      bufferHours: decimalOrNull(row.bufferHours),
      figures: evaluated ? figuresOf(evaluated) : null,
    };
  });
}

interface Evaluated {
  readonly rankByLoss: number | null;
  readonly rankByScore: number;
  readonly result: unknown;
  readonly place: unknown;
}

function figuresOf({ rankByLoss, rankByScore, ...stored }: Evaluated): Figures {
  const result = stored.result as LineResult;
  const place = stored.place as LinePlace | null;
  const { baseLoss, shortageLoss, unknownLoss, score, scoreParts, stopsPerYear, worstStage } = result;
  return {
    stopLoss: drawnLoss(result.stopLoss, place),
    ...{ baseLoss, shortageLoss, unknownLoss, score, scoreParts, rankByLoss, rankByScore },
    rankSpan: place?.place ?? null,
    ...{ stopsPerYear, sparesUsedUpOn: result.depletionP80, worstStage, assumed: [...result.assumed] },
  };
}

/** The evaluation of the installation's day: on what it was computed, and the sums the actor may see. */
export async function readEvaluation(actor: Actor): Promise<z.output<typeof evaluation>> {
  const mark = await currentEvaluation(await readAsOf(actor, undefined));
  const [lines, totals] = await Promise.all([
    database().evaluatedLine.count({ where: { evaluationId: mark.id } }),
    readDrawnTotals(actor, mark.id),
  ]);
  const { asOf, dataVersion, engine, assumptionSet } = mark;
  const { kind, version } = assumptionSet;
  return {
    ...{ asOf, dataVersion, engine, assumptions: { kind, version }, lines },
    groupLoss: totals.group && spanOf(totals.group),
    siteLosses: Object.entries(totals.sites).map(([siteCode, loss]) => {
      return { siteCode, stopLoss: spanOf(loss) };
    }),
  };
}

const spanOf = ({ mean, low, high }: LossSpan) => ({ mean, low, high });
