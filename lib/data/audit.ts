import "server-only";
import type { Actor } from "@/lib/access/actor";
import { mayAt, scopeOf } from "@/lib/access/policy";
import { rowsOfThing } from "@/lib/data/audit/rowsOfThing";
import { readThingNames } from "@/lib/data/auditThings";
import { database } from "@/lib/data/client";
import { readZone } from "@/lib/data/readerZone";
import { siteIds } from "@/lib/data/scope";
import { auditChanges, reasonOf } from "@/lib/view/audit/auditChanges";
import type { AuditLine, AuditPage, AuditQuestion } from "@/lib/view/audit/auditEntry";
import { Prisma } from "@/prisma/generated/client";

const ROWS_A_PAGE = 100;
/** Entries about people and their ways in, which only who manages people everywhere reads. */
const OF_PEOPLE = [
  "User",
  "AccountInvitation",
  "AccessKey",
  "Webhook",
  "CalendarFeed",
  "Digest",
  "ReportWish",
];

interface Row {
  readonly id: string;
  readonly at: string;
  readonly who: string | null;
  readonly keyName: string | null;
  readonly deed: string;
  readonly entityId: string;
  readonly siteId: string | null;
  readonly siteCode: string | null;
  readonly before: unknown;
  readonly after: unknown;
  readonly why: string | null;
}

/**
 * What people did, newest first, a page at a time: of the actor's sites, and of what belongs to no site where they
 * read at all of them. Values are left out where the actor sees no amounts.
 */
export async function readAudit(
  actor: Actor,
  question: AuditQuestion,
  most: number = ROWS_A_PAGE,
): Promise<AuditPage> {
  const rows = await find(actor, question, most + 1);
  const shown = rows.slice(0, most);
  const asked = question.thing?.id;
  const names = await readThingNames(actor, [
    ...shown.map(({ entityId }) => entityId),
    ...(asked === undefined ? [] : [asked]),
  ]);
  const named = asked === undefined ? undefined : names.get(asked);
  const last = shown.at(-1);
  return {
    lines: shown.map((row) => lineOf(actor, row, names)),
    next: rows.length > most && last ? `${last.at}_${last.id}` : null,
    of: named?.href ? { label: named.label, href: named.href } : null,
  };
}

/** Every entry the question is about, for a file, read a page at a time. */
export async function* readWholeAudit(actor: Actor, question: AuditQuestion): AsyncGenerator<AuditLine> {
  let after: string | null | undefined = question.after;
  do {
    const page: AuditPage = await readAudit(actor, { ...question, after: after ?? undefined }, 1000);
    yield* page.lines;
    after = page.next;
  } while (after !== null);
}

async function find(actor: Actor, question: AuditQuestion, most: number): Promise<Row[]> {
  const [rows, people, zone] = await Promise.all([
    question.thing ? rowsOfThing(question.thing) : null,
    question.who ? peopleNamed(question.who) : null,
    readZone(actor),
  ]);
  if (people?.length === 0) return [];
  return database().$queryRaw<Row[]>`
    SELECT a."id"::text AS "id", to_char(a."at" AT TIME ZONE 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS.US"Z"') AS "at",
      u."name" AS "who", a."keyName", a."deed", a."entityId", a."siteId"::text AS "siteId", s."code" AS "siteCode",
      a."before", a."after", a."why"
    FROM "AuditEntry" a
    LEFT JOIN "User" u ON u."id" = a."userId"
    LEFT JOIN "Site" s ON s."id" = a."siteId"
    WHERE ${Prisma.join([...allowed(actor), ...narrowed(question, { rows, people, zone })], " AND ")}
    ORDER BY a."at" DESC, a."id" DESC
    LIMIT ${most}`;
}

/** Only what narrows is said, so that the database finds by it. */
function allowed(actor: Actor): Prisma.Sql[] {
  const own = siteIds(actor, "read")?.in;
  const people = scopeOf(actor.grants, "people:write") === "all";
  return [
    Prisma.sql`true`,
    ...(own ? [Prisma.sql`a."siteId" = ANY(${own}::uuid[])`] : []),
    ...(people ? [] : [Prisma.sql`a."entity" <> ALL(${OF_PEOPLE}::text[])`]),
  ];
}

/** Ids of those whose name holds the words. */
async function peopleNamed(words: string): Promise<string[]> {
  const found = await database().user.findMany({
    where: { name: { contains: words.replaceAll(/[\\%_]/g, "\\$&"), mode: "insensitive" } },
    select: { id: true },
  });
  return found.map(({ id }) => id);
}

interface Narrowing {
  readonly rows: readonly string[] | null;
  readonly people: readonly string[] | null;
  /** Its clock says when the days begin and end. */
  readonly zone: string;
}

function narrowed(
  { area, from, until, after }: AuditQuestion,
  { rows, people, zone }: Narrowing,
): Prisma.Sql[] {
  const [at, id] = after?.split("_") ?? [];
  return [
    ...(rows ? [Prisma.sql`a."entityId" = ANY(${rows}::text[])`] : []),
    ...(people ? [Prisma.sql`a."userId" = ANY(${people}::text[])`] : []),
    ...(area ? [Prisma.sql`split_part(a."deed", ':', 1) = ${area}`] : []),
    ...(from ? [Prisma.sql`a."at" >= ${from}::date::timestamp AT TIME ZONE ${zone}`] : []),
    ...(until ? [Prisma.sql`a."at" < (${until}::date + 1)::timestamp AT TIME ZONE ${zone}`] : []),
    ...(at && id ? [Prisma.sql`(a."at", a."id") < (${at}::timestamptz, ${id}::uuid)`] : []),
  ];
}

function lineOf(actor: Actor, row: Row, names: Awaited<ReturnType<typeof readThingNames>>): AuditLine {
  const { id, at, who, keyName, deed, siteId, siteCode, before, after } = row;
  return {
    ...{ id, at, who, byKey: keyName, deed, siteCode },
    what: names.get(row.entityId) ?? null,
    changes: seesAmounts(actor, siteId) ? auditChanges(before, after) : null,
    why: reasonOf(row.why, before, after),
  };
}

const seesAmounts = ({ grants }: Actor, siteId: string | null) =>
  siteId === null ? scopeOf(grants, "money:read") === "all" : mayAt(grants, "money:read", siteId);
