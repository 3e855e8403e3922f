import {
  type ColumnDef,
  columnFilteringFeature,
  columnVisibilityFeature,
  createFilteredRowModel,
  createSortedRowModel,
  type Row as ModelRow,
  type ReactTable,
  rowSortingFeature,
  tableFeatures,
} from "@tanstack/react-table";
import { type Column, wordOf } from "@/app/_ui/DataTable/column";
import type { TableState } from "@/app/_ui/DataTable/tableAddress";

/** What our tables can do; the rest of the library stays out of the bundle. */
export const features = tableFeatures({
  columnFilteringFeature,
  columnVisibilityFeature,
  rowSortingFeature,
  filteredRowModel: createFilteredRowModel(),
  sortedRowModel: createSortedRowModel(),
});

export type Features = typeof features;
export type Model<Row extends object> = ReactTable<Features, Row>;

const collator = new Intl.Collator("en-GB", { numeric: true, sensitivity: "base" });

function compare(a: unknown, b: unknown): number {
  if (typeof a === "string" && typeof b === "string") return collator.compare(a, b);
  return Number(a) - Number(b);
}

/** A column in the library's terms; what is not known becomes undefined, which it sorts last both ways. */
export function columnDef<Row extends object>(column: Column<Row>): ColumnDef<Features, Row> {
  return {
    id: column.key,
    header: column.header,
    accessorFn: (row: Row) => column.value(row) ?? undefined,
    sortUndefined: "last",
    sortFn: (a: ModelRow<Features, Row>, b: ModelRow<Features, Row>, id: string) =>
      compare(a.getValue(id), b.getValue(id)),
    filterFn: (row: ModelRow<Features, Row>, _id: string, wanted: unknown) =>
      wordOf(column, row.original) === wanted,
  };
}

/** Rows in which every word of the search stands somewhere in the searched columns. */
export function searchRows<Row>(
  rows: readonly Row[],
  columns: readonly Column<Row>[],
  search: string,
): Row[] {
  const words = search.toLowerCase().split(/\s+/).filter(Boolean);
  const searched = columns.filter((column) => column.filter === "text" || column.filter === "choice");
  if (words.length === 0) return [...rows];
  return rows.filter((row) => {
    const text = searched.map((column) => wordOf(column, row).toLowerCase()).join("\n");
    return words.every((word) => text.includes(word));
  });
}

/** Which columns are shown, from the person's choice or the table's own. */
export function visibility<Row>(columns: readonly Column<Row>[], state: TableState): Record<string, boolean> {
  const chosen = state.columns;
  return Object.fromEntries(
    columns.map((column, place) => [
      column.key,
      place === 0 || (chosen ? chosen.includes(column.key) : !column.hidden),
    ]),
  );
}

/** The order after pressing a header: first the useful way round, then the other, then none. */
export function nextSort(key: string, numeric: boolean, sort: TableState["sort"]): TableState["sort"] {
  if (sort?.key !== key) return { key, descending: numeric };
  return sort.descending === numeric ? { key, descending: !numeric } : null;
}
