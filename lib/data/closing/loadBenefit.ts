import "server-only";
import type { Transaction } from "@/lib/data/change";
import type { IsoDate } from "@/lib/kernel/isoDate";
import { type CountedEvent, comparedStretches, type Stretch } from "@/lib/projects/benefit";
import type { StopCostTerms } from "@/lib/risk/expectedStopCost";
import type { BenefitFacts } from "@/lib/view/benefit";
import type { Project } from "@/prisma/generated/client";

const DAYS_PER_YEAR = 365.25;

interface When {
  /** Null is not closed. */
  readonly closedOn: IsoDate | null;
  readonly asOf: IsoDate;
}

/** What the records say of a line before a project and after it; null while it is not closed or never began. */
export async function loadBenefit(
  tx: Transaction,
  project: Project,
  { closedOn, asOf }: When,
): Promise<BenefitFacts | null> {
  const removed = await tx.removedUnit.findMany({
    where: { projectId: project.id },
    select: { result: true, removedOn: true },
    orderBy: { removedOn: "asc" },
  });
  const beganOn = (removed[0]?.removedOn ?? project.startsOn)?.toISOString().slice(0, 10);
  if (closedOn === null || beganOn === undefined) return null;
  const { before, after, whole } = comparedStretches({ beganOn, closedOn }, asOf);
  const added = await tx.fittedUnit.count({ where: { projectId: project.id, added: true } });
  const places = await tx.position.count({
    where: { itemClass: "drive", machine: { lineId: project.lineId } },
  });
  return {
    ...{ before, after, whole, cost: await loadStopCost(tx, project.lineId) },
    experienceBefore: await loadExperience(tx, project, { stretch: before, places: places - added }),
    experienceAfter: await loadExperience(tx, project, { stretch: after, places }),
    released: removed.map(({ result }) => result),
    request: await loadRequest(tx, project),
  };
}

interface Asked {
  readonly stretch: Stretch;
  readonly places: number;
}

async function loadExperience(tx: Transaction, { lineId }: Project, { stretch, places }: Asked) {
  const events = await tx.$queryRaw<CountedEvent[]>`
    WITH happened AS (
      SELECT e."id", e."downtimeHours"::float8 AS "downtimeHours",
        coalesce(part."itemClass", p."itemClass", e."itemClass") = 'drive' AS "isDrive",
        row_number() OVER (PARTITION BY coalesce(e."commonCause", e."id"::text) ORDER BY e."happenedAt", e."id") AS "nth"
      FROM "Event" e
      JOIN "Site" s ON s."id" = e."siteId"
      LEFT JOIN "Position" p ON p."id" = e."positionId"
      LEFT JOIN "Machine" m ON m."id" = coalesce(e."machineId", p."machineId")
      LEFT JOIN "Part" part ON part."id" = e."partId"
      WHERE coalesce(e."lineId", m."lineId") = ${lineId}::uuid AND e."setAside" IS NULL
        AND (e."happenedAt" AT TIME ZONE s."timeZone")::date >= ${stretch.from}::date
        AND (e."happenedAt" AT TIME ZONE s."timeZone")::date < ${stretch.until}::date
    )
    SELECT "downtimeHours", coalesce("isDrive", false) AND "nth" = 1 AS "driveLeft" FROM happened ORDER BY "id"`;
  const days = (Date.parse(stretch.until) - Date.parse(stretch.from)) / 86_400_000;
  return { events, unitYears: (places * days) / DAYS_PER_YEAR };
}

/** What a stop of the line costs today, EUR; null when it is not known. */
async function loadStopCost(tx: Transaction, lineId: string): Promise<StopCostTerms | null> {
  const [row] = await tx.$queryRaw<(StopCostTerms & { readonly costPerHour: number | null })[]>`
    SELECT (l."costPerHour" / r."perEuro")::float8 AS "costPerHour",
      coalesce(l."bufferHours", 0)::float8 AS "bufferHours", l."unrecoveredShare"::float8 AS "unrecoveredShare",
      coalesce(l."costFixed" / r."perEuro", 0)::float8 AS "fixed",
      (SELECT coalesce(jsonb_agg(jsonb_build_object(
          'afterHours', (step->>'afterHours')::float8, 'cost', ((step->>'cost')::numeric / r."perEuro")::float8)
        ), '[]') FROM jsonb_array_elements(l."costSteps") step) AS "steps"
    FROM "Line" l
    JOIN "Site" s ON s."id" = l."siteId"
    LEFT JOIN "CurrencyRate" r ON r."currency" = s."currency"
    WHERE l."id" = ${lineId}::uuid`;
  return row && row.costPerHour !== null ? row : null;
}

/** What the plan's line promised and what was paid, EUR at the budget rate. */
async function loadRequest(tx: Transaction, project: Project): Promise<BenefitFacts["request"]> {
  const line =
    project.planLineId === null
      ? null
      : await tx.planLine.findUnique({
          where: { id: project.planLineId },
          select: { cost: true, stopLoss: true },
        });
  const paid = await tx.costEntry.aggregate({
    where: { projectId: project.id, kind: "actual" },
    _sum: { amount: true },
  });
  const rate =
    project.budgetRate ??
    (await tx.currencyRate.findUnique({ where: { currency: project.currency } }))?.perEuro ??
    null;
  const inEuro = (amount: { toNumber(): number } | null) =>
    amount === null || rate === null ? null : amount.toNumber() / rate.toNumber();
  return {
    cost: line?.cost.toNumber() ?? null,
    stopLoss: line?.stopLoss.toNumber() ?? null,
    budget: inEuro(project.budget),
    paid: inEuro(paid._sum.amount),
  };
}
