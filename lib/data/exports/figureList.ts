import "server-only";
import type { Actor } from "@/lib/access/actor";
import type { ListQuestion } from "@/lib/data/exports/recordList";
import type { ExportCell, ExportColumn, ExportKind, ExportRow } from "@/lib/view/exportTable";

/** A list that is computed, or read by a reader of its own. */
export interface FigureList {
  readonly name: string;
  readonly title: string;
  readonly about: string;
  readonly page: string;
  readonly columns: readonly ExportColumn[];
  readonly rows: (actor: Actor, question: ListQuestion) => AsyncGenerator<ExportRow>;
}

type Money = "EUR" | `of:${string}`;

/** A column: its key, what it holds (or in which currency it is money), its title and its value of a row. */
type ValueColumn<Row> = readonly [
  key: string,
  holds: ExportKind | Money,
  title: string,
  value: (row: Row) => ExportCell,
];

interface Recipe<Row> extends Omit<FigureList, "columns" | "rows"> {
  readonly read: (actor: Actor, question: ListQuestion) => Promise<readonly Row[]> | AsyncIterable<Row>;
  readonly columns: readonly ValueColumn<Row>[];
}

/** Puts a reader and the columns of its rows together. */
export function figureList<Row>({ read, columns, ...list }: Recipe<Row>): FigureList {
  async function* rows(actor: Actor, question: ListQuestion): AsyncGenerator<ExportRow> {
    const found = read(actor, question);
    const source = Symbol.asyncIterator in found ? found : await found;
    for await (const row of source) yield columns.map(([, holds, , value]) => cellOf(holds, value(row)));
  }
  return { ...list, columns: columns.map(([key, holds, title]) => ({ key, title, ...kindOf(holds) })), rows };
}

const isMoney = (holds: ExportKind | Money): holds is Money => holds === "EUR" || holds.startsWith("of:");

const kindOf = (holds: ExportKind | Money): Pick<ExportColumn, "kind" | "currency"> =>
  isMoney(holds) ? { kind: "money", currency: holds } : { kind: holds };

/** Estimates of money carry no more than cents. */
const cellOf = (holds: ExportKind | Money, value: ExportCell): ExportCell =>
  isMoney(holds) && typeof value === "number" ? Math.round(value * 100) / 100 : value;
