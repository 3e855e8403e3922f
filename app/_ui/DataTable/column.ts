import type { ReactNode } from "react";

/** What a column sorts and filters by; null is not known and always sorts last. */
export type CellValue = string | number | boolean | null;

/** One column of a `DataTable`, as data. Declare the list at the top of a client file, outside the component. */
export interface Column<Row> {
  /** Name in the address; letters, digits and dashes. */
  readonly key: string;
  readonly header: string;
  /** Unit in the header, e.g. `k€ a year`; cells then hold bare numbers. */
  readonly unit?: string;
  /** `end` for numbers. */
  readonly align?: "start" | "end";
  /** Sorts and filters; also shown when there is no `cell`. */
  readonly value: (row: Row) => CellValue;
  /** What is shown. The first column must not hold a link of its own when the table has `rowHref`. */
  readonly cell?: (row: Row) => ReactNode;
  /** `text` joins the search box, `choice` gets a list of its values, `none` neither. Default `none`. */
  readonly filter?: "text" | "choice" | "none";
  /** Word of a row in the choice list and the search box, where `value` is a number to sort by. */
  readonly word?: (row: Row) => string;
  /** 1 always shown, 2 from 640 px, 3 from 1024 px. Default 2; the first column always shows. */
  readonly priority?: 1 | 2 | 3;
  /** Not shown until chosen in the column menu. */
  readonly hidden?: boolean;
  /** Narrowest useful width, CSS, e.g. `12rem`. */
  readonly width?: string;
  /** Total or note in the table's foot. */
  readonly foot?: ReactNode;
}

/** The word a row is searched and chosen by in a column. */
export function wordOf<Row>(column: Column<Row>, row: Row): string {
  if (column.word) return column.word(row);
  const value = column.value(row);
  return value === null ? "not known" : String(value);
}

/** The distinct words of a column, in order, for its choice list. */
export function choicesOf<Row>(column: Column<Row>, rows: readonly Row[]): string[] {
  const sorted = [...rows].sort((a, b) => {
    const [x, y] = [column.value(a), column.value(b)];
    return typeof x === "number" && typeof y === "number" ? x - y : 0;
  });
  const words = [...new Set(sorted.map((row) => wordOf(column, row)))];
  const numeric = rows.some((row) => typeof column.value(row) === "number");
  return numeric ? words : words.sort((a, b) => a.localeCompare(b, "en-GB", { numeric: true }));
}
