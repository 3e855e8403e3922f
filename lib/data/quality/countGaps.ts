import "server-only";
import type { Transaction } from "@/lib/data/change";
import { GAP_SQL, SUBJECTS } from "@/lib/data/quality/gapSubjects";
import type { IsoDate } from "@/lib/kernel/isoDate";
import type { SiteGap } from "@/lib/view/footing";
import { GAPS, type GapSubject } from "@/lib/view/gap";
import { Prisma } from "@/prisma/generated/client";

/** Of one site; lists in the order of the gaps. */
interface CountRow {
  readonly siteId: string;
  readonly of: number;
  readonly missing: readonly number[];
  readonly oldest: readonly (IsoDate | null)[];
  readonly bears: readonly (readonly string[] | null)[];
}

export interface Counting {
  readonly asOf: IsoDate;
  /** Sites to count; null is all. Inside lib/data only: the caller has narrowed them to the person's. */
  readonly ids: readonly string[] | null;
  /** Kinds of record to look at. */
  readonly subjects: readonly GapSubject[];
}

/** Counts every gap of some kinds of record at every site, one question for each kind; inside a transaction. */
export async function countGaps(tx: Transaction, asked: Counting): Promise<SiteGap[]> {
  // Compiling such a question takes longer than answering it; the sums of a large group fit this memory.
  await tx.$executeRaw`SET LOCAL jit = off`;
  await tx.$executeRaw`SET LOCAL work_mem = '64MB'`;
  const found: SiteGap[] = [];
  for (const subject of asked.subjects) found.push(...(await countSubject(tx, subject, asked)));
  return found;
}

async function countSubject(tx: Transaction, subject: GapSubject, { asOf, ids }: Counting) {
  const gaps = GAPS.filter((gap) => gap.subject === subject);
  const { from, bearsOn } = SUBJECTS[subject];
  const places = gaps.map((_, i) => i + 1);
  const has = (place: number) => Prisma.sql`"has"[${place}::int]`;
  const missing = places.map((i) => Prisma.sql`count(*) FILTER (WHERE ${has(i)})`);
  const oldest = places.map((i) => Prisma.sql`min("days"[${i}::int]) FILTER (WHERE ${has(i)})`);
  const bears = gaps.map(({ bearing }, i) =>
    bearing === "none"
      ? Prisma.sql`NULL::jsonb`
      : Prisma.sql`jsonb_agg(DISTINCT "bearsOn") FILTER (WHERE ${has(i + 1)})`,
  );
  // OFFSET keeps the planner from working every condition out once for each sum over it.
  const rows = await tx.$queryRaw<CountRow[]>`
    SELECT "siteId", count(*)::int AS "of", ARRAY[${Prisma.join(missing)}]::int[] AS "missing",
      ARRAY[${Prisma.join(oldest)}]::text[] AS "oldest", jsonb_build_array(${Prisma.join(bears)}) AS "bears"
    FROM (
      SELECT s."id"::text AS "siteId", ${bearsOn} AS "bearsOn",
        ARRAY[${Prisma.join(gaps.map(({ key }) => GAP_SQL[key].when(asOf)))}] AS "has",
        ARRAY[${Prisma.join(gaps.map(({ key }) => GAP_SQL[key].since))}]::date[] AS "days"
      FROM ${from(asOf)} ${joinsOn(subject)} (${ids}::uuid[] IS NULL OR s."id" = ANY(${ids}::uuid[]))
      OFFSET 0
    ) record
    GROUP BY 1 ORDER BY 1`;
  return rows.flatMap(({ siteId, of, missing: counts, oldest: days, bears: named }) =>
    gaps.map(
      ({ key }, i): SiteGap => ({
        ...{ siteId, key, of, missing: counts[i] ?? 0, oldestOn: days[i] ?? null, bearsOn: named[i] ?? [] },
      }),
    ),
  );
}

const WITHOUT_WHERE: ReadonlySet<GapSubject> = new Set(["line", "controller", "part", "name"]);

/** What a further condition on a subject begins with. */
export function joinsOn(subject: GapSubject): Prisma.Sql {
  return WITHOUT_WHERE.has(subject) ? Prisma.sql`WHERE` : Prisma.sql`AND`;
}
