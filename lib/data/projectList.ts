import "server-only";
import type { Actor } from "@/lib/access/actor";
import { projectsOf } from "@/lib/access/policy";
import { database } from "@/lib/data/client";
import { siteIds } from "@/lib/data/scope";
import { placesOf } from "@/lib/kernel/currency";
import type { IsoDate } from "@/lib/kernel/isoDate";
import { roundAmount } from "@/lib/kernel/money";
import type { ProjectStatus } from "@/lib/view/project";
import type { PaidQuarter } from "@/lib/view/projectCash";
import { type ListedProject, listedFigures } from "@/lib/view/projectList";
import { Prisma } from "@/prisma/generated/client";

/** One project as the database adds it up; money as text, weights as numbers. */
interface SummedRow {
  readonly id: string;
  readonly code: string;
  readonly name: string;
  readonly status: ProjectStatus;
  readonly siteCode: string;
  readonly lineCode: string;
  readonly currency: string;
  readonly perEuro: string | null;
  readonly cause: string | null;
  readonly startsOn: IsoDate | null;
  readonly endsOn: IsoDate | null;
  readonly forecast: string | null;
  readonly budget: string;
  readonly paid: string;
  readonly open: string;
  /** Null where the budget is not split by class. */
  readonly contingencyLeft: string | null;
  readonly weight: number;
  readonly planned: number;
  readonly earned: number;
  readonly overdue: number;
  readonly gate: string | null;
  readonly gateOpen: number | null;
  readonly gateOn: IsoDate | null;
}

/**
 * The projects at the sites the person may see, by code: added up by the database in one question, so that neither
 * milestones nor entries travel. The sums are those of `ledger` and `progress`.
 */
export async function readProjectList(actor: Actor, asOf: IsoDate): Promise<ListedProject[]> {
  const rows = await sumProjects(actor, asOf);
  return rows.map(({ perEuro, ...row }) => {
    const places = placesOf(row.currency);
    const exact = (text: string) => roundAmount(text, places);
    const money = {
      ...{ budget: exact(row.budget), paid: exact(row.paid), open: exact(row.open) },
      contingencyLeft: row.contingencyLeft === null ? null : exact(row.contingencyLeft),
      forecast: row.forecast === null ? null : exact(row.forecast),
    };
    return { ...row, ...money, perEuro: perEuro === null ? null : Number(perEuro), ...listedFigures(row) };
  });
}

function sumProjects(actor: Actor, asOf: IsoDate): Promise<SummedRow[]> {
  const ids = siteIds(actor, "read")?.in ?? null;
  const worksIn = projectsOf(actor.grants, "read");
  return database().$queryRaw<SummedRow[]>`
    WITH seen AS (
      SELECT * FROM "Project" WHERE ${ids}::uuid[] IS NULL OR "siteId" = ANY(${ids}::uuid[])
        OR "id" = ANY(${worksIn}::uuid[])
    ), ${moneyOf(asOf)}, ${budgetsOf(asOf)}, ${workOf(asOf)}, ${gates}
    SELECT p."id"::text, p."code", p."name", p."status"::text, site."code" AS "siteCode", line."code" AS "lineCode",
      p."currency", rate."perEuro"::text, p."cause", p."startsOn"::text, p."endsOn"::text, p."forecast"::text,
      (p."budget" + coalesce(change."fresh", 0))::text AS "budget",
      coalesce(money."paid", 0)::text AS "paid", coalesce(money."open", 0)::text AS "open",
      (item."contingency" + coalesce(change."toContingency", 0) - coalesce(money."ofContingency", 0))::text
        AS "contingencyLeft",
      coalesce(work."weight", 0) AS "weight", coalesce(work."planned", 0) AS "planned",
      coalesce(work."earned", 0) AS "earned", coalesce(work."overdue", 0) AS "overdue",
      gate."name" AS "gate",
      CASE WHEN gate."id" IS NOT NULL THEN (SELECT count(*) FROM "GateItem" i WHERE i."gateId" = gate."id"
        AND i."doneOn" IS NULL)::int END AS "gateOpen",
      (SELECT t."plannedStart"::text FROM "ProjectTask" t WHERE t."id" = gate."taskId") AS "gateOn"
    FROM seen p
    JOIN "Site" site ON site."id" = p."siteId"
    JOIN "Line" line ON line."id" = p."lineId"
    LEFT JOIN "CurrencyRate" rate ON rate."currency" = p."currency"
    LEFT JOIN money ON money."projectId" = p."id"
    LEFT JOIN change ON change."projectId" = p."id"
    LEFT JOIN item ON item."projectId" = p."id"
    LEFT JOIN work ON work."projectId" = p."id"
    LEFT JOIN gate ON gate."projectId" = p."id"
    ORDER BY p."code"`;
}

/** By order, then by project: paid, and of each order what no invoice has taken; as `ledger` has it. */
const moneyOf = (asOf: IsoDate) => Prisma.sql`
    bought AS (
      SELECT "projectId", CASE "kind" WHEN 'committed' THEN "reference" ELSE "orderReference" END AS "order",
        sum("amount") FILTER (WHERE "kind" = 'committed') AS "ordered",
        bool_or("costClass" = 'contingency') FILTER (WHERE "kind" = 'committed') AS "isContingency",
        coalesce(sum("amount") FILTER (WHERE "kind" = 'actual'), 0) AS "paid",
        coalesce(sum("amount") FILTER (WHERE "kind" = 'actual' AND "costClass" IS NULL), 0) AS "unsorted",
        coalesce(sum("amount") FILTER (WHERE "kind" = 'actual' AND "costClass" = 'contingency'), 0) AS "ofContingency"
      FROM "CostEntry" WHERE "spentOn" <= ${asOf}::date GROUP BY 1, 2
    ), money AS (
      SELECT "projectId", sum("paid") AS "paid", sum(greatest(0, "ordered" - "paid")) FILTER (WHERE "ordered" IS NOT NULL) AS "open",
        sum("ofContingency" + CASE WHEN "isContingency" THEN "unsorted" + greatest(0, "ordered" - "paid") ELSE 0 END)
          AS "ofContingency"
      FROM bought GROUP BY 1
    )`;

/** Approved changes and the contingency of the original budget. */
const budgetsOf = (asOf: IsoDate) => Prisma.sql`
    change AS (
      SELECT c."projectId",
        sum(a."amount") FILTER (WHERE c."source" = 'new_money') AS "fresh",
        sum(CASE WHEN c."source" = 'contingency' THEN -a."amount" ELSE 0 END
          + CASE WHEN a."costClass" = 'contingency' THEN a."amount" ELSE 0 END) AS "toContingency"
      FROM "ChangeOrder" c JOIN "ChangeAmount" a ON a."changeId" = c."id"
      WHERE c."state" = 'approved' AND c."decidedOn" <= ${asOf}::date
      GROUP BY 1
    ), item AS (
      SELECT "projectId", coalesce(sum("amount") FILTER (WHERE "costClass" = 'contingency'), 0) AS "contingency"
      FROM "BudgetItem" GROUP BY 1
    )`;

/** What milestones plan and earn, whole or by the axes that did their step; as `progress` has it. */
const workOf = (asOf: IsoDate) => Prisma.sql`
    counted AS (
      SELECT "id", "lineId" FROM seen WHERE "id" IN (SELECT "projectId" FROM "Milestone" WHERE "axisStep" IS NOT NULL)
    ), axes AS (
      SELECT p."id" AS "projectId", coalesce(r."round", 1) AS "round", count(*) AS "axes"
      FROM counted p
      JOIN "Machine" m ON m."lineId" = p."lineId"
      JOIN "Axis" a ON a."machineId" = m."id"
      LEFT JOIN "ProjectAxis" r ON r."projectId" = p."id" AND r."axisId" = a."id"
      WHERE coalesce(r."round", 1) > 0 GROUP BY 1, 2
    ), done AS (
      SELECT p."id" AS "projectId", coalesce(r."round", 1) AS "round", s."step", count(*) AS "axes"
      FROM counted p
      JOIN "AxisStep" s ON s."projectId" = p."id" AND s."doneOn" <= ${asOf}::date
      JOIN "Axis" a ON a."id" = s."axisId"
      JOIN "Machine" m ON m."id" = a."machineId" AND m."lineId" = p."lineId"
      LEFT JOIN "ProjectAxis" r ON r."projectId" = p."id" AND r."axisId" = a."id"
      WHERE coalesce(r."round", 1) > 0 GROUP BY 1, 2, 3
    ), stepped AS (
      SELECT s."id", sum(d."axes")::float8 / sum(t."axes") AS "share"
      FROM "Milestone" s
      JOIN axes t ON t."projectId" = s."projectId" AND (s."axisRound" IS NULL OR t."round" = s."axisRound")
      LEFT JOIN done d ON d."projectId" = t."projectId" AND d."round" = t."round" AND d."step" = s."axisStep"
      WHERE s."axisStep" IS NOT NULL GROUP BY 1
    ), earning AS (
      SELECT s."projectId", s."weight"::float8 AS "weight", s."dueOn",
        CASE WHEN s."axisStep" IS NOT NULL THEN coalesce(stepped."share", 0)
          WHEN s."doneOn" <= ${asOf}::date THEN 1 ELSE 0 END AS "share"
      FROM "Milestone" s LEFT JOIN stepped ON stepped."id" = s."id"
    ), work AS (
      SELECT "projectId", sum("weight") AS "weight",
        coalesce(sum("weight") FILTER (WHERE "dueOn" <= ${asOf}::date), 0) AS "planned",
        sum("weight" * "share") AS "earned",
        count(*) FILTER (WHERE "dueOn" < ${asOf}::date AND "share" < 1)::int AS "overdue"
      FROM earning GROUP BY 1
    )`;

/** The first gate of each project that is not passed. */
const gates = Prisma.sql`
    gate AS (
      SELECT DISTINCT ON ("projectId") "projectId", "id", "name", "taskId"
      FROM "ProjectGate" WHERE "decision" <> 'passed' ORDER BY "projectId", "sequence"
    )`;

/** What was paid by quarter and currency at the sites the person may see, up to a day. */
export async function readPaidByQuarter(actor: Actor, asOf: IsoDate): Promise<PaidQuarter[]> {
  const ids = siteIds(actor, "read")?.in ?? null;
  return database().$queryRaw<PaidQuarter[]>`
    SELECT date_trunc('quarter', e."spentOn")::date::text AS "from", p."currency", sum(e."amount")::float8 AS "amount"
    FROM "CostEntry" e JOIN "Project" p ON p."id" = e."projectId"
    WHERE e."kind" = 'actual' AND e."spentOn" <= ${asOf}::date
      AND (${ids}::uuid[] IS NULL OR p."siteId" = ANY(${ids}::uuid[]))
    GROUP BY 1, 2 ORDER BY 1, 2`;
}
