import "server-only";
import type { Actor } from "@/lib/access/actor";
import { type Deed, scopeOf } from "@/lib/access/policy";
import { database } from "@/lib/data/client";
import type { PathColumn } from "@/lib/data/exports/columns";
import { sites } from "@/lib/data/scope";
import type { IsoDate } from "@/lib/kernel/isoDate";
import type { ExportCell, ExportRow } from "@/lib/view/exportTable";
import type { Prisma } from "@/prisma/generated/client";

/** A list that is saved row by row as it is stored. */
export interface RecordList {
  readonly name: string;
  readonly title: string;
  /** What a row is, in a few words. */
  readonly about: string;
  /** Page that shows it. */
  readonly page: string;
  readonly model: Uncapitalize<Prisma.ModelName>;
  /** Fields of the order it is read in, unique together; `id` unless named. */
  readonly key?: readonly string[];
  readonly columns: readonly PathColumn[];
  /** Condition on a row from one on its site; without it the list is the group's and everybody who reads has it. */
  readonly under?: (site: Prisma.SiteWhereInput) => object;
  /** Further condition by who asks. */
  readonly where?: (actor: Actor) => object;
  /** Conditions a page's filters put, by the name in its address. */
  readonly filters?: Readonly<Record<string, (word: string, asOf: IsoDate) => object>>;
  /** Only for those who may do this at all sites. */
  readonly atAllSites?: Deed;
}

export interface ListQuestion {
  readonly asOf: IsoDate;
  /** Filter by name: what the address says. */
  readonly asked: ReadonlyMap<string, string>;
}

const ROWS_AT_ONCE = 2_000;

/** Whether the actor may save the list at all. */
export function maySave({ atAllSites }: Pick<RecordList, "atAllSites">, actor: Actor): boolean {
  return atAllSites === undefined || scopeOf(actor.grants, atAllSites) === "all";
}

/** The rows an actor may see, by key, some thousand at a time: memory does not grow with the list. */
export async function* readRecords(
  actor: Actor,
  list: RecordList,
  question: ListQuestion,
): AsyncGenerator<ExportRow> {
  const key = list.key ?? ["id"];
  const where = conditions(actor, list, question);
  const asked = {
    select: selectOf([...list.columns.map(({ path }) => path), ...key]),
    orderBy: key.map((field) => ({ [field]: "asc" })),
    take: ROWS_AT_ONCE,
  };
  let last: object | undefined;
  do {
    const rows = await finderOf(list.model).findMany({ ...asked, ...behind(last, key, where) });
    for (const row of rows) yield list.columns.map((column) => cellOf(valueAt(row, column.path), column));
    last = rows.length < ROWS_AT_ONCE ? undefined : rows.at(-1);
  } while (last !== undefined);
}

/** Asks for the rows behind the last one read, which by a single key need not be there any more. */
function behind(last: object | undefined, key: readonly string[], where: readonly object[]): object {
  if (last === undefined) return { where: { AND: where } };
  const place = Object.fromEntries(key.map((field) => [field, valueAt(last, field)]));
  const [field = "id", ...more] = key;
  if (more.length === 0) return { where: { AND: [...where, { [field]: { gt: place[field] } }] } };
  return { where: { AND: where }, skip: 1, cursor: { [key.join("_")]: place } };
}

interface Finder {
  findMany(asked: object): Promise<readonly object[]>;
}

/** Every model is found alike; only its fields differ, and they are data here. */
const finderOf = (model: RecordList["model"]) => database()[model] as unknown as Finder;

function conditions(actor: Actor, list: RecordList, { asOf, asked }: ListQuestion): object[] {
  const code = asked.get("site");
  const site = { ...sites(actor, "read"), ...(code ? { code } : {}) };
  const narrowed = Object.entries(list.filters ?? {}).flatMap(([name, condition]) => {
    const word = asked.get(name);
    return word ? [condition(word, asOf)] : [];
  });
  return [
    ...(list.under && Object.keys(site).length > 0 ? [list.under(site)] : []),
    ...(list.where ? [list.where(actor)] : []),
    ...narrowed,
  ];
}

type Selection = { [field: string]: true | { select: Selection } };

/** What to read for some paths: `part.number` asks for the number of the part. */
function selectOf(paths: readonly string[]): Selection {
  const select: Selection = {};
  for (const path of paths) {
    const relations = path.split(".");
    const field = relations.pop() ?? path;
    let within = select;
    for (const relation of relations) {
      const asked = within[relation];
      const inner: Selection = asked === undefined || asked === true ? {} : asked.select;
      within[relation] = { select: inner };
      within = inner;
    }
    within[field] ??= true;
  }
  return select;
}

function valueAt(row: object, path: string): unknown {
  let value: unknown = row;
  for (const field of path.split(".")) {
    if (value === null || value === undefined) return null;
    value = (value as Readonly<Record<string, unknown>>)[field];
  }
  return value;
}

function cellOf(value: unknown, { path, kind }: PathColumn): ExportCell {
  if (value === null) return null;
  if (value instanceof Date) return value.toISOString().slice(0, kind === "date" ? 10 : undefined);
  if (kind === "json") return JSON.stringify(value);
  if (Array.isArray(value)) return value.join(", ");
  if (kind === "number" || kind === "money" || kind === "share") return Number(value);
  if (typeof value === "string" || typeof value === "boolean") return value;
  throw new RangeError(`nothing can be saved of ${path}: ${typeof value}`);
}
