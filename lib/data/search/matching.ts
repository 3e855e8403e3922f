import "server-only";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import type { IsoDate } from "@/lib/kernel/isoDate";
import type { SearchHit } from "@/lib/view/searchHit";
import { Prisma } from "@/prisma/generated/client";

export const MOST_HITS = 20;

/** Of a text that finds thousands, so many that begin with it and so many that hold it are ranked. */
const MOST_RANKED = 300;

/** Shorter texts are only looked for at the beginning of many rows: the index of their insides needs three letters. */
const SHORTEST_INSIDE = 3;

/** What is looked for. */
export interface Wanted {
  /** The asked text as the store compares it: upper case letters and digits only. */
  readonly key: string;
  readonly asOf: IsoDate;
}

export type RankedHit = SearchHit & { readonly rank: number };

/** The asked text as the store compares it. */
export async function readSearchKey(_actor: Actor, asked: string): Promise<string> {
  const [row] = await database().$queryRaw<{ key: string }[]>`SELECT "searchKey"(${asked}) AS "key"`;
  return row?.key ?? "";
}

/** Condition: one of the texts holds the asked one. The key is letters and digits, so LIKE has no marks in it. */
export function holds(key: string, ...texts: Prisma.Sql[]): Prisma.Sql {
  const pattern = `%${key}%`;
  return Prisma.sql`(${Prisma.join(
    texts.map((text) => Prisma.sql`"searchKey"(${text}) LIKE ${pattern}`),
    " OR ",
  )})`;
}

/** Rank of the best match of the texts: 0 whole, 1 beginning, 2 inside. */
export function rankOf(key: string, ...texts: Prisma.Sql[]): Prisma.Sql {
  const ranks = texts.map(
    (text) => Prisma.sql`CASE WHEN "searchKey"(${text}) = ${key} THEN 0
      WHEN "searchKey"(${text}) LIKE ${`${key}%`} THEN 1 ELSE 2 END`,
  );
  return Prisma.sql`least(${Prisma.join(ranks)})`;
}

/** Where many rows are looked through: the first of `from` with the condition, by their id and a text of theirs. */
export interface ManyRows {
  readonly id: Prisma.Sql;
  readonly text: Prisma.Sql;
  readonly from: Prisma.Sql;
  readonly where: Prisma.Sql;
}

/** Ids of the rows to rank, so few that their number never shows: those that begin with the text in order, then others. */
export function firstOf(key: string, { id, text, from, where }: ManyRows): Prisma.Sql {
  const begins = Prisma.sql`(SELECT ${id} AS "id" FROM ${from}
    WHERE "searchKey"(${text}) COLLATE "C" LIKE ${`${key}%`} AND ${where}
    ORDER BY "searchKey"(${text}) COLLATE "C", ${id} LIMIT ${MOST_RANKED})`;
  if (key.length < SHORTEST_INSIDE) return begins;
  return Prisma.sql`${begins} UNION
    (SELECT ${id} FROM ${from} WHERE ${holds(key, text)} AND ${where} LIMIT ${MOST_RANKED})`;
}

/** Address of something on a machine of a line's page; each thing has one of its own. */
export function onLine(lineCode: string, ...anchor: readonly string[]): string {
  return `/lines/${encodeURIComponent(lineCode)}#${anchor.map(encodeURIComponent).join("-")}`;
}
