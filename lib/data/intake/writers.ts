import "server-only";
import type { Transaction } from "@/lib/data/change";
import type { CopyRows } from "@/lib/data/intake/bulk";
import type { Entity, Kept } from "@/lib/intake/intents/intent";

export type Row = Readonly<Record<string, Kept>>;

/** The three things an import does to a table; Prisma checks the fields when it runs. */
interface Table {
  createMany(args: { data: never }): PromiseLike<unknown>;
  updateMany(args: { where: never; data: never }): PromiseLike<{ count: number }>;
  deleteMany(args: { where: never }): PromiseLike<{ count: number }>;
}

const tables: Readonly<Record<Entity, (tx: Transaction) => Table>> = {
  CurrencyRate: (tx) => tx.currencyRate,
  Site: (tx) => tx.site,
  Line: (tx) => tx.line,
  Controller: (tx) => tx.controller,
  Machine: (tx) => tx.machine,
  Panel: (tx) => tx.panel,
  Network: (tx) => tx.network,
  Axis: (tx) => tx.axis,
  Family: (tx) => tx.family,
  Part: (tx) => tx.part,
  PartAlias: (tx) => tx.partAlias,
  Successor: (tx) => tx.successor,
  LifecycleFact: (tx) => tx.lifecycleFact,
  Position: (tx) => tx.position,
  Unit: (tx) => tx.unit,
  Placement: (tx) => tx.placement,
  StockLot: (tx) => tx.stockLot,
  Event: (tx) => tx.event,
  Backup: (tx) => tx.backup,
  Contact: (tx) => tx.contact,
  ShutdownWindow: (tx) => tx.shutdownWindow,
  Sighting: (tx) => tx.sighting,
};

const ROWS_A_STATEMENT = 500;
/** From so many rows on COPY is worth its own statement. */
const ROWS_TO_COPY = 50;

/**
 * Adds rows, parents having been added before.
 *
 * @param copy How to write many rows at once, where the transaction can.
 */
export async function insertRows(
  tx: Transaction,
  { entity, rows }: { readonly entity: Entity; readonly rows: readonly Row[] },
  copy: CopyRows | null,
): Promise<void> {
  if (copy && rows.length >= ROWS_TO_COPY) {
    for (const alike of byFields(rows)) await copy(entity, alike);
    return;
  }
  for (let i = 0; i < rows.length; i += ROWS_A_STATEMENT)
    await tables[entity](tx).createMany({
      data: rows.slice(i, i + ROWS_A_STATEMENT).map(forPrisma) as never,
    });
}

/** What a row does not give gets the default of its column, so only rows that give the same fields go together. */
export function byFields(rows: readonly Row[]): Iterable<Row[]> {
  const groups = new Map<string, Row[]>();
  for (const row of rows) {
    const fields = Object.keys(row).join();
    const group = groups.get(fields);
    if (group) group.push(row);
    else groups.set(fields, [row]);
  }
  return groups.values();
}

/** A row of a table, by the entity's name and its id. */
export interface RowAddress {
  readonly entity: Entity;
  readonly id: string;
}

/** Sets fields of one row. */
export async function updateRow(tx: Transaction, { entity, id }: RowAddress, values: Row): Promise<void> {
  await tables[entity](tx).updateMany({ where: idOf(entity, id), data: forPrisma(values) as never });
}

/** Takes a row out again; false when it was gone already. */
export async function removeRow(tx: Transaction, { entity, id }: RowAddress): Promise<boolean> {
  return (await tables[entity](tx).deleteMany({ where: idOf(entity, id) })).count > 0;
}

function idOf(entity: Entity, id: string): never {
  return (entity === "CurrencyRate" ? { currency: id } : { id }) as never;
}

const DAY = /^\d{4}-\d{2}-\d{2}$/;

/** Prisma wants a day as an instant. */
function forPrisma(row: Row): Record<string, Kept> {
  return Object.fromEntries(
    Object.entries(row).map(([field, value]) => [
      field,
      typeof value === "string" && /(On|From|Until)$/.test(field) && DAY.test(value)
        ? `${value}T00:00:00.000Z`
        : value,
    ]),
  );
}
