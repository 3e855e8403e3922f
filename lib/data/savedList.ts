import "server-only";
import type { Actor } from "@/lib/access/actor";
import { maySomewhere, seesAmounts } from "@/lib/access/policy";
import { type ListQuestion, maySave, type RecordList, readRecords } from "@/lib/data/exports/recordList";
import { savedLists } from "@/lib/data/exports/registry";
import type { ExportColumn, ExportTable } from "@/lib/view/exportTable";

/** A list a person may save. */
export interface SavableList {
  readonly name: string;
  readonly title: string;
  readonly about: string;
  /** Page that shows it. */
  readonly page: string;
}

type SavedList = typeof savedLists extends ReadonlyMap<string, infer L> ? L : never;

const isStored = (list: SavedList): list is RecordList => "model" in list;

const mayHave = (actor: Actor, list: SavedList) =>
  maySomewhere(actor.grants, "read") && (!isStored(list) || maySave(list, actor));

/** Every list the actor may save. */
export function savableLists(actor: Actor): SavableList[] {
  return [...savedLists.values()]
    .filter((list) => mayHave(actor, list))
    .map(({ name, title, about, page }) => ({ name, title, about, page }));
}

/**
 * A list with the rows the actor may see, read while they are asked for; null where there is none of that name, or
 * none for them.
 */
export function openSavedList(actor: Actor, name: string, question: ListQuestion): ExportTable | null {
  const list = savedLists.get(name);
  if (!list || !mayHave(actor, list)) return null;
  const rows = isStored(list) ? readRecords(actor, list, question) : list.rows(actor, question);
  const table = { name, title: list.title, columns: list.columns.map(plain), rows };
  return seesAmounts(actor.grants) ? table : withoutAmounts(table);
}

/** A list without its columns of money, and without those that may say an amount in their own words. */
function withoutAmounts({ columns, rows, ...table }: ExportTable): ExportTable {
  const kept = columns.map(({ kind }) => kind !== "money" && kind !== "json");
  async function* narrowed() {
    for await (const row of rows) yield row.filter((_, i) => kept[i]);
  }
  return { ...table, columns: columns.filter((_, i) => kept[i]), rows: narrowed() };
}

/** Without what only the reader needs. */
const plain = ({ key, title, kind, unit, currency }: ExportColumn): ExportColumn => ({
  ...{ key, title, kind },
  ...(unit === undefined ? {} : { unit }),
  ...(currency === undefined ? {} : { currency }),
});
