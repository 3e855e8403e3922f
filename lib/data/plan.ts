import "server-only";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { atSites } from "@/lib/data/scope";
import type { PlanPage, PlanRow, PlanSummary, PlanTotals } from "@/lib/view/plan";
import type { Prisma } from "@/prisma/generated/client";

/** Lines of a plan the person may see, at the sites asked for; null asks for all of them. */
const own = (actor: Actor, at: readonly string[] | null) =>
  ({
    line: { AND: [atSites(actor, "read"), at === null ? {} : { siteId: { in: [...at] } }] },
  }) satisfies Prisma.PlanLineWhereInput;

const lineOfPlan = {
  line: { select: { code: true, name: true, siteId: true } },
  project: { select: { code: true } },
} satisfies Prisma.PlanLineInclude;

function withOwnLines(actor: Actor, at: readonly string[] | null) {
  return {
    lines: { where: own(actor, at), include: lineOfPlan, orderBy: [{ rank: "asc" }, { id: "asc" }] },
    _count: { select: { lines: true } },
  } satisfies Prisma.PlanInclude;
}

type StoredPlan = Prisma.PlanGetPayload<{ include: ReturnType<typeof withOwnLines> }>;

/** The plans with a line the person may see at the sites asked for (null: at any), newest year first. */
export async function readPlans(actor: Actor, at: readonly string[] | null = null): Promise<PlanSummary[]> {
  const plans = await database().plan.findMany({
    where: { lines: { some: own(actor, at) } },
    include: withOwnLines(actor, at),
    orderBy: [{ year: "desc" }, { createdAt: "desc" }],
  });
  const names = await readNames(
    actor,
    plans.map((plan) => plan.createdBy),
  );
  return plans.map((plan) => summaryOf(plan, names));
}

/** One plan with its lines at the person's sites; null when there is none or none of its lines is there. */
export async function readPlan(actor: Actor, id: string): Promise<PlanPage | null> {
  const plan = await database().plan.findFirst({
    where: { id, lines: { some: own(actor, null) } },
    include: withOwnLines(actor, null),
  });
  if (!plan) return null;
  return {
    ...summaryOf(plan, await readNames(actor, [plan.createdBy])),
    version: plan.version,
    engine: plan.engine,
    dataVersion: Number(plan.dataVersion),
    rows: plan.lines.map(rowOf),
  };
}

function summaryOf(plan: StoredPlan, names: ReadonlyMap<string, string>): PlanSummary {
  const { id, name, year, status, kind, lines } = plan;
  return {
    ...{ id, name, year, status, kind },
    asOf: plan.asOf.toISOString().slice(0, 10),
    rankedBy: plan.rankedBy === "score" ? "score" : "loss",
    createdBy: names.get(plan.createdBy) ?? "somebody no longer listed",
    createdOn: plan.createdAt.toISOString().slice(0, 10),
    ownLines: lines.length,
    ownFunded: lines.filter((line) => line.funded).length,
    totals: lines.length === plan._count.lines ? totalsOf(plan) : null,
  };
}

function totalsOf({ budget, lines }: StoredPlan): PlanTotals {
  const funded = lines.filter((line) => line.funded);
  return {
    budget: budget.toNumber(),
    lines: lines.length,
    funded: funded.length,
    spent: funded.reduce((sum, { cost }) => sum + cost.toNumber(), 0),
    fundedLoss: funded.reduce((sum, { stopLoss }) => sum + stopLoss.toNumber(), 0),
  };
}

function rowOf(row: StoredPlan["lines"][number]): PlanRow {
  const { id, line, rank, funded, pin, project } = row;
  return {
    ...{ id, rank, funded, pin },
    ...{ code: line.code, name: line.name, siteId: line.siteId },
    cost: row.cost.toNumber(),
    stopLoss: row.stopLoss.toNumber(),
    score: row.score.toNumber(),
    project: project?.code ?? null,
  };
}

/** Names of people by id, for the plans the person may see. */
async function readNames(_actor: Actor, ids: readonly string[]): Promise<Map<string, string>> {
  const users = await database().user.findMany({
    where: { id: { in: [...new Set(ids)] } },
    select: { id: true, name: true },
  });
  return new Map(users.map((user) => [user.id, user.name]));
}
