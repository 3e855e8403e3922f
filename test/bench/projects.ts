import { loadavg } from "node:os";
import { database } from "@/lib/data/client";
import { readPaidByQuarter, readProjectList } from "@/lib/data/projectList";
import { Prisma } from "@/prisma/generated/client";
import { makeActor } from "@/test/support/actors";
import { freshDatabase } from "@/test/support/database";
import { type Measured, printTable } from "./table";

const PROJECTS = 500;
const TASKS = 100;
const REPEATS = 25;
const TARGET_MS = 300;
const ASOF = "2026-11-30";

/** Every project has a line of its own with 42 axes, 100 tasks, 8 milestones, 40 entries, 3 gates and 3 changes. */
const FILL = [
  Prisma.sql`INSERT INTO "CurrencyRate" ("currency", "perEuro", "validFrom") VALUES ('EUR', 1, '2026-01-01')`,
  Prisma.sql`INSERT INTO "Site" ("id", "code", "name", "country", "timeZone", "currency")
    SELECT gen_random_uuid(), 'S' || n, 'Site ' || n, 'DE', 'Europe/Berlin', 'EUR' FROM generate_series(1, 10) n`,
  Prisma.sql`INSERT INTO "Line" ("id", "siteId", "code", "name")
    SELECT gen_random_uuid(), (SELECT "id" FROM "Site" WHERE "code" = 'S' || (1 + n % 10)), 'L' || n, 'Line ' || n
    FROM generate_series(1, ${PROJECTS}::int) n`,
  Prisma.sql`INSERT INTO "Machine" ("id", "lineId", "code", "name")
    SELECT gen_random_uuid(), l."id", 'M' || n, 'Machine ' || n FROM "Line" l, generate_series(1, 3) n`,
  Prisma.sql`INSERT INTO "Axis" ("id", "machineId", "code")
    SELECT gen_random_uuid(), m."id", 'A' || n FROM "Machine" m, generate_series(1, 14) n`,
  Prisma.sql`INSERT INTO "Project" ("id", "siteId", "lineId", "code", "name", "status", "currency", "budget", "startsOn", "endsOn")
    SELECT gen_random_uuid(), l."siteId", l."id", l."code" || '-R1', 'Retrofit of ' || l."code", 'in_work', 'EUR',
      400000, '2026-02-01', '2027-06-30' FROM "Line" l`,
  Prisma.sql`INSERT INTO "BudgetItem" ("projectId", "costClass", "amount")
    SELECT p."id", c, CASE c WHEN 'contingency' THEN 25000 ELSE 75000 END
    FROM "Project" p, unnest(enum_range(NULL::"CostClass")) c`,
  Prisma.sql`INSERT INTO "Milestone" ("id", "projectId", "sequence", "name", "weight", "dueOn", "doneOn", "axisStep")
    SELECT gen_random_uuid(), p."id", n, 'Milestone ' || n, 12.5, date '2026-03-01' + n * 55,
      CASE WHEN n <= 4 THEN date '2026-03-05' + n * 55 END, CASE n WHEN 6 THEN 'powered'::"AxisStepKind" END
    FROM "Project" p, generate_series(1, 8) n`,
  Prisma.sql`INSERT INTO "ProjectTask" ("id", "projectId", "code", "sequence", "name", "days", "plannedStart", "plannedFinish")
    SELECT gen_random_uuid(), p."id", 'T' || n, n, 'Task ' || n, 5, date '2026-02-01' + n * 4, date '2026-02-06' + n * 4
    FROM "Project" p, generate_series(1, ${TASKS}::int) n`,
  Prisma.sql`INSERT INTO "CostEntry" ("id", "projectId", "kind", "amount", "spentOn", "text", "reference", "costClass", "orderReference")
    SELECT gen_random_uuid(), p."id", CASE WHEN n % 2 = 0 THEN 'actual' ELSE 'committed' END::"CostKind",
      4000 + n, date '2026-03-01' + n * 7, 'Entry', 'N' || n, 'drives', CASE WHEN n % 2 = 0 THEN 'N' || (n - 1) END
    FROM "Project" p, generate_series(1, 40) n`,
  Prisma.sql`INSERT INTO "ChangeOrder" ("id", "projectId", "number", "what", "why", "source", "state", "askedBy", "askedOn", "decidedBy", "decidedOn")
    SELECT gen_random_uuid(), p."id", n, 'Change', 'Found', 'contingency', 'approved', 'a', '2026-05-01', 'b', '2026-05-02'
    FROM "Project" p, generate_series(1, 3) n`,
  Prisma.sql`INSERT INTO "ChangeAmount" ("changeId", "costClass", "amount") SELECT "id", 'drives', 3000 FROM "ChangeOrder"`,
  Prisma.sql`INSERT INTO "ProjectGate" ("id", "projectId", "sequence", "name", "taskId")
    SELECT gen_random_uuid(), t."projectId", t."sequence" / 30, 'Gate ' || t."sequence" / 30, t."id"
    FROM "ProjectTask" t WHERE t."sequence" IN (30, 60, 90)`,
  Prisma.sql`INSERT INTO "GateItem" ("id", "gateId", "sequence", "text")
    SELECT gen_random_uuid(), g."id", n, 'Item' FROM "ProjectGate" g, generate_series(1, 6) n`,
  Prisma.sql`INSERT INTO "AxisStep" ("id", "projectId", "axisId", "step", "doneOn", "doneBy", "recordedBy")
    SELECT gen_random_uuid(), p."id", a."id", 'powered', '2026-10-01', 'a', 'a'
    FROM "Project" p JOIN "Machine" m ON m."lineId" = p."lineId" JOIN "Axis" a ON a."machineId" = m."id"
    WHERE m."code" = 'M1'`,
  Prisma.sql`ANALYZE`,
];

/** Milliseconds of some runs after one that warms up, the shortest first. */
async function times(run: () => Promise<unknown>): Promise<number[]> {
  await run();
  const out: number[] = [];
  for (let i = 0; i < REPEATS; i += 1) {
    const from = performance.now();
    await run();
    out.push(performance.now() - from);
  }
  return out.sort((a, b) => a - b);
}

const middle = (sorted: readonly number[]) => sorted[Math.floor(sorted.length / 2)] ?? Number.NaN;
const ms = (value: number) => `${value.toFixed(value < 100 ? 1 : 0)} ms`;

function rowOf(name: string, taken: readonly number[], floor: readonly number[]): Measured {
  const [half, slowest, bare] = [middle(taken), taken.at(-1) ?? Number.NaN, middle(floor)];
  return {
    ...{
      name,
      value: `${ms(half)}, slowest ${ms(slowest)}`,
      floor: ms(bare),
      ratio: `${(half / bare).toFixed(1)} ×`,
    },
    ...{ target: `half of the runs under ${TARGET_MS} ms`, met: half < TARGET_MS },
  };
}

const made = await freshDatabase("bench_projects");
try {
  for (const statement of FILL) await database().$executeRaw(statement);
  const actor = await makeActor("viewer");
  const rows = await readProjectList(actor, ASOF);
  if (rows.length !== PROJECTS) throw new Error(`expected ${PROJECTS} projects, got ${rows.length}`);
  const floor = await times(
    () => database().$queryRaw`
      SELECT p."id"::text, p."code", p."name", p."status"::text, s."code" AS "site", l."code" AS "line", p."budget"::text
      FROM "Project" p JOIN "Site" s ON s."id" = p."siteId" JOIN "Line" l ON l."id" = p."lineId" ORDER BY p."code"`,
  );
  const list = await times(() => readProjectList(actor, ASOF));
  const both = await times(() => Promise.all([readProjectList(actor, ASOF), readPaidByQuarter(actor, ASOF)]));
  console.log(
    `load ${loadavg()[0]?.toFixed(1)}, ${PROJECTS} projects with ${TASKS} tasks each, ${REPEATS} runs`,
  );
  printTable([rowOf("list", list, floor), rowOf("list and money by quarter", both, floor)]);
  if (middle(both) >= TARGET_MS) process.exitCode = 1;
} finally {
  await made.close();
}
