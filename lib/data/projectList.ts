import "server-only";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { siteIds } from "@/lib/data/scope";
import { placesOf } from "@/lib/kernel/currency";
import type { IsoDate } from "@/lib/kernel/isoDate";
import { roundAmount } from "@/lib/kernel/money";
import type { ProjectStatus } from "@/lib/view/project";
import type { PaidQuarter } from "@/lib/view/projectCash";
import { type ListedProject, listedFigures } from "@/lib/view/projectList";

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
  return database().$queryRaw<SummedRow[]>`
    WITH seen AS (
      SELECT * FROM "Project" WHERE ${ids}::uuid[] IS NULL OR "siteId" = ANY(${ids}::uuid[])
    ), entry AS (
      SELECT e."projectId", e."kind", e."amount", e."reference", e."orderReference", e."costClass"
      FROM "CostEntry" e JOIN seen ON seen."id" = e."projectId" WHERE e."spentOn" <= ${asOf}::date
    ), invoiced AS (
      SELECT "projectId", "orderReference" AS "reference", sum("amount") AS "amount"
      FROM entry WHERE "kind" = 'actual' AND "orderReference" IS NOT NULL GROUP BY 1, 2
    ), bound AS (
      SELECT e."projectId",
        CASE WHEN e."kind" = 'actual' THEN e."amount" ELSE 0 END AS "paid",
        CASE WHEN e."kind" = 'committed' THEN greatest(0, e."amount" - coalesce(i."amount", 0)) ELSE 0 END AS "open",
        coalesce(e."costClass", o."costClass") = 'contingency' AS "isContingency"
      FROM entry e
      LEFT JOIN invoiced i ON e."kind" = 'committed' AND i."projectId" = e."projectId" AND i."reference" = e."reference"
      LEFT JOIN entry o ON e."kind" = 'actual' AND o."kind" = 'committed'
        AND o."projectId" = e."projectId" AND o."reference" = e."orderReference"
    ), money AS (
      SELECT "projectId", sum("paid") AS "paid", sum("open") AS "open",
        sum("paid" + "open") FILTER (WHERE "isContingency") AS "ofContingency"
      FROM bound GROUP BY 1
    ), change AS (
      SELECT c."projectId",
        sum(a."amount") FILTER (WHERE c."source" = 'new_money') AS "fresh",
        sum(CASE WHEN c."source" = 'contingency' THEN -a."amount" ELSE 0 END
          + CASE WHEN a."costClass" = 'contingency' THEN a."amount" ELSE 0 END) AS "toContingency"
      FROM "ChangeOrder" c JOIN seen ON seen."id" = c."projectId" JOIN "ChangeAmount" a ON a."changeId" = c."id"
      WHERE c."state" = 'approved' AND c."decidedOn" <= ${asOf}::date GROUP BY 1
    ), item AS (
      SELECT b."projectId", coalesce(sum(b."amount") FILTER (WHERE b."costClass" = 'contingency'), 0) AS "contingency"
      FROM "BudgetItem" b JOIN seen ON seen."id" = b."projectId" GROUP BY 1
    ), stone AS (
      SELECT s.* FROM "Milestone" s JOIN seen ON seen."id" = s."projectId"
    ), axis AS (
      SELECT p."id" AS "projectId", a."id" AS "axisId", coalesce(r."round", 1) AS "round"
      FROM seen p
      JOIN "Machine" m ON m."lineId" = p."lineId"
      JOIN "Axis" a ON a."machineId" = m."id"
      LEFT JOIN "ProjectAxis" r ON r."projectId" = p."id" AND r."axisId" = a."id"
      WHERE coalesce(r."round", 1) > 0 AND p."id" IN (SELECT "projectId" FROM stone WHERE "axisStep" IS NOT NULL)
    ), total AS (
      SELECT "projectId", "round", count(*) AS "axes" FROM axis GROUP BY 1, 2
    ), done AS (
      SELECT axis."projectId", axis."round", s."step", count(*) AS "axes"
      FROM axis JOIN "AxisStep" s ON s."projectId" = axis."projectId" AND s."axisId" = axis."axisId"
      WHERE s."doneOn" <= ${asOf}::date GROUP BY 1, 2, 3
    ), earning AS (
      SELECT s."projectId", s."weight"::float8 AS "weight", s."dueOn",
        CASE WHEN s."axisStep" IS NULL THEN CASE WHEN s."doneOn" <= ${asOf}::date THEN 1 ELSE 0 END
          ELSE coalesce((SELECT sum(d."axes") FROM done d WHERE d."projectId" = s."projectId" AND d."step" = s."axisStep"
              AND (s."axisRound" IS NULL OR d."round" = s."axisRound"))
            / nullif((SELECT sum(t."axes") FROM total t WHERE t."projectId" = s."projectId"
              AND (s."axisRound" IS NULL OR t."round" = s."axisRound")), 0), 0) END::float8 AS "share"
      FROM stone s
    ), work AS (
      SELECT "projectId", sum("weight") AS "weight",
        coalesce(sum("weight") FILTER (WHERE "dueOn" <= ${asOf}::date), 0) AS "planned",
        sum("weight" * "share") AS "earned",
        count(*) FILTER (WHERE "dueOn" < ${asOf}::date AND "share" < 1)::int AS "overdue"
      FROM earning GROUP BY 1
    ), gate AS (
      SELECT DISTINCT ON (g."projectId") g."projectId", g."name", t."plannedStart" AS "on",
        (SELECT count(*) FROM "GateItem" i WHERE i."gateId" = g."id" AND i."doneOn" IS NULL)::int AS "open"
      FROM "ProjectGate" g JOIN seen ON seen."id" = g."projectId" LEFT JOIN "ProjectTask" t ON t."id" = g."taskId"
      WHERE g."decision" <> 'passed' ORDER BY g."projectId", g."sequence"
    )
    SELECT p."id"::text, p."code", p."name", p."status"::text, site."code" AS "siteCode", line."code" AS "lineCode",
      p."currency", rate."perEuro"::text, p."cause", p."startsOn"::text, p."endsOn"::text, p."forecast"::text,
      (p."budget" + coalesce(change."fresh", 0))::text AS "budget",
      coalesce(money."paid", 0)::text AS "paid", coalesce(money."open", 0)::text AS "open",
      (item."contingency" + coalesce(change."toContingency", 0) - coalesce(money."ofContingency", 0))::text
        AS "contingencyLeft",
      coalesce(work."weight", 0) AS "weight", coalesce(work."planned", 0) AS "planned",
      coalesce(work."earned", 0) AS "earned", coalesce(work."overdue", 0) AS "overdue",
      gate."name" AS "gate", gate."open" AS "gateOpen", gate."on"::text AS "gateOn"
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
