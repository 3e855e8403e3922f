import "server-only";
import type { Actor } from "@/lib/access/actor";
import { type Deed, maySomewhere } from "@/lib/access/policy";
import { database } from "@/lib/data/client";
import { currentEvaluation } from "@/lib/data/group/currentEvaluation";
import { readRetrofitScopes } from "@/lib/data/planScope";
import { atSites } from "@/lib/data/scope";
import { readScopeNorms } from "@/lib/data/scopeNorms";
import type { IsoDate } from "@/lib/kernel/isoDate";
import { type CostNorms, retrofitCost } from "@/lib/retrofit/costNorm";
import { costNormsOf } from "@/lib/retrofit/scope/scopeNorms";
import type { LinePlace } from "@/lib/risk/draws/linePlace";
import type { LineResult } from "@/lib/risk/evaluation";
import { drawnLoss } from "@/lib/view/linePlace";
import type { Candidate, Candidates, RetrofitScope } from "@/lib/view/planCut";
import type { Prisma } from "@/prisma/generated/client";

const nothing: RetrofitScope = {
  ...{ machines: 0, drives: 0, undatedDrives: 0, motors: 0, controllers: 0, hmis: 0 },
  drivePrice: null,
};

/**
 * The lines a budget may reach, with what replacing them is estimated to cost.
 *
 * Lines where the person may plan; somebody who may plan nowhere looks at the lines they may read.
 */
export async function readCandidates(actor: Actor, asOf: IsoDate): Promise<Candidates> {
  const deed: Deed = maySomewhere(actor.grants, "plan:write") ? "plan:write" : "read";
  const { id: evaluationId, engine, dataVersion } = await currentEvaluation(asOf);
  const [rows, groupLines, scopes, { norms }] = await Promise.all([
    database().evaluatedLine.findMany({
      where: { evaluationId, line: atSites(actor, deed) },
      orderBy: { line: { code: "asc" } },
      select: {
        lineId: true,
        rankByLoss: true,
        rankByScore: true,
        result: true,
        place: true,
        line: { select: line },
      },
    }),
    database().evaluatedLine.count({ where: { evaluationId } }),
    readRetrofitScopes(actor, { asOf, evaluationId, deed }),
    readScopeNorms(actor),
  ]);
  const costNorms = costNormsOf(norms);
  const lines = rows.map((row): Candidate => {
    const { score, ...known } = row.result as unknown as LineResult;
    const stopLoss = drawnLoss(known.stopLoss, row.place as unknown as LinePlace | null);
    const scope = scopes.get(row.lineId) ?? nothing;
    return {
      id: row.lineId,
      code: row.line.code,
      name: row.line.name,
      siteCode: row.line.site.code,
      rankByLoss: row.rankByLoss,
      rankByScore: row.rankByScore,
      ...{ score, stopLoss, scope, estimate: estimateOf(scope, costNorms) },
      project: row.line.projects[0]?.code ?? null,
    };
  });
  return { asOf, engine, dataVersion, groupLines, lines };
}

const line = {
  code: true,
  name: true,
  site: { select: { code: true } },
  projects: {
    where: { status: { in: ["funded", "in_work", "proving"] } },
    select: { code: true },
    orderBy: { code: "asc" },
    take: 1,
  },
} satisfies Prisma.LineSelect;

function estimateOf({ undatedDrives: _, ...units }: RetrofitScope, norms: CostNorms): Candidate["estimate"] {
  return units.drives === 0 ? null : retrofitCost(units, norms);
}
