import type { Client } from "pg";
import type { Ledger } from "@/test/faults/ledger";
import { ROWS_OF_FILE } from "@/test/faults/load";
import { on } from "@/test/support/archives";

interface Question {
  /** What must hold. */
  readonly law: string;
  /** Rows that break it. */
  readonly sql: string;
  readonly values: (ledger: Ledger) => unknown[];
}

const none = () => [];

/** What must hold after each round; each answers with the rows that break it. */
const QUESTIONS: readonly Question[] = [
  {
    law: "each acknowledged event is stored",
    sql: `SELECT a.id FROM unnest($1::uuid[], $2::text[]) a(id, text)
      WHERE NOT EXISTS (SELECT FROM "Event" e WHERE e."id" = a.id AND e."text" = a.text)`,
    values: ({ events }) => [[...events.keys()], [...events.values()]],
  },
  {
    law: "no event is stored twice",
    sql: `SELECT "text" FROM "Event" WHERE "text" LIKE 'faults %' GROUP BY 1 HAVING count(*) > 1`,
    values: none,
  },
  {
    law: "each event told to the interface has one audit entry, and each entry its event",
    sql: `SELECT coalesce(e."id"::text, a."entityId") FROM
        (SELECT "id" FROM "Event" WHERE "text" LIKE 'faults %') e
        FULL JOIN (SELECT "entityId", count(*) AS n FROM "AuditEntry" WHERE "deed" = 'event:add' GROUP BY 1) a
          ON a."entityId" = e."id"::text
      WHERE e."id" IS NULL OR a."n" IS DISTINCT FROM 1`,
    values: none,
  },
  {
    law: "each lot holds what was acknowledged last",
    sql: `SELECT a.id FROM unnest($1::uuid[], $2::int[]) a(id, quantity) JOIN "StockLot" l ON l."id" = a.id
      WHERE l."quantity" IS DISTINCT FROM a.quantity`,
    values: ({ lots }) => [[...lots.keys()], [...lots.values()].map(({ quantity }) => quantity)],
  },
  {
    law: "each change of a lot is audited once, the last one as the lot stands",
    sql: `SELECT a.id FROM unnest($1::uuid[], $2::int[]) a(id, changes) JOIN "StockLot" l ON l."id" = a.id
      CROSS JOIN LATERAL (SELECT count(*) AS n, (array_agg("after" ORDER BY "at" DESC))[1]->>'quantity' AS last
        FROM "AuditEntry" WHERE "entityId" = a.id::text AND "deed" = 'stock:lot') d
      WHERE d.n <> a.changes OR d.last <> l."quantity"::text`,
    values: ({ lots }) => [[...lots.keys()], [...lots.values()].map(({ changes }) => changes)],
  },
  {
    law: "each file said to be loaded is loaded",
    sql: `SELECT a.id FROM unnest($1::uuid[]) a(id)
      WHERE NOT EXISTS (SELECT FROM "ImportBatch" b WHERE b."id" = a.id AND b."state" = 'committed')`,
    values: ({ imports }) => [[...imports.keys()]],
  },
  {
    law: "each file is loaded wholly, once and audited, or not at all",
    sql: `SELECT b."fileName" FROM "ImportBatch" b CROSS JOIN LATERAL (SELECT
        (SELECT count(*) FROM "ImportChange" c WHERE c."batchId" = b."id") AS kept,
        (SELECT count(*) FROM "AuditEntry" a WHERE a."entityId" = b."id"::text) AS audited) d
      WHERE b."fileName" LIKE 'file%' AND (d.kept, d.audited) IS DISTINCT FROM
        (CASE b."state" WHEN 'committed' THEN ($1::bigint, 1::bigint) ELSE (0::bigint, 0::bigint) END)`,
    values: () => [ROWS_OF_FILE],
  },
  {
    law: "the events of a file are all there or none is, and none twice",
    sql: `SELECT split_part("reference", '-', 1) FROM "Event" WHERE "reference" LIKE 'file%' GROUP BY 1
      HAVING count(*) <> $1 OR count(DISTINCT "reference") <> $1`,
    values: () => [ROWS_OF_FILE],
  },
  {
    law: "no report is made twice, and each has its four files and its audit entry",
    sql: `SELECT i."slot" FROM "ReportIssue" i WHERE i."slot" IS NOT NULL AND (
        (SELECT count(*) FROM "ReportIssue" o WHERE o."slot" = i."slot") <> 1
        OR (SELECT count(*) FROM "ReportFile" f WHERE f."issueId" = i."id") <> 4
        OR (SELECT count(*) FROM "AuditEntry" a WHERE a."entityId" = i."id"::text) <> 1)`,
    values: none,
  },
  {
    law: "each search that was said to be started is kept, with its audit entry",
    sql: `SELECT a.id FROM unnest($1::uuid[]) a(id) WHERE NOT EXISTS (SELECT FROM "SolveRun" r JOIN "AuditEntry" e
        ON e."entityId" = r."id"::text AND e."deed" = 'plan:solve' WHERE r."id" = a.id)`,
    values: ({ searches }) => [[...searches]],
  },
  {
    law: "a search that counts as solved has its plan, and no other has",
    sql: `SELECT "id" FROM "SolveRun" WHERE ("state" = 'solved') <> ("outcome" IS NOT NULL)`,
    values: none,
  },
];

/** @returns The laws that do not hold, with rows that break them. */
export function brokenLaws(url: string, ledger: Ledger): Promise<string[]> {
  return on(url, async (client) => {
    const broken: string[] = [];
    for (const { law, sql, values } of QUESTIONS) {
      const { rows } = await client.query({ text: sql, values: values(ledger), rowMode: "array" });
      if (rows.length > 0) broken.push(`not true that ${law}: ${rows.slice(0, 3).join(", ")}`);
    }
    return broken;
  });
}

export const LAWS = QUESTIONS.length;

/** What was asked of the queue and is not done: reports, messages. */
export function waitingIn(client: Client, ledger: Ledger): Promise<string[]> {
  return client
    .query<{ what: string }>(
      `SELECT 'report ' || s AS what FROM unnest($1::text[]) s
         WHERE NOT EXISTS (SELECT FROM "ReportIssue" i WHERE i."slot" = s)
       UNION ALL SELECT 'message ' || "id" FROM "WebhookDelivery" WHERE "state" <> 'delivered'`,
      [[...ledger.reports]],
    )
    .then(({ rows }) => rows.map(({ what }) => what));
}
