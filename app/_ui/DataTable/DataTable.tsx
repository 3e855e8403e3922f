"use client";

import { useTable } from "@tanstack/react-table";
import { type ReactNode, type RefObject, useEffect, useMemo, useRef } from "react";
import type { Column } from "@/app/_ui/DataTable/column";
import { TableBar } from "@/app/_ui/DataTable/TableBar";
import { TableBody, VIRTUAL_FROM } from "@/app/_ui/DataTable/TableBody";
import { TableFoot } from "@/app/_ui/DataTable/TableFoot";
import { TableHead } from "@/app/_ui/DataTable/TableHead";
import type { TableState } from "@/app/_ui/DataTable/tableAddress";
import { columnDef, features, searchRows, visibility } from "@/app/_ui/DataTable/tableModel";
import { useTableAddress } from "@/app/_ui/DataTable/useTableAddress";
import { isAlone } from "@/app/_ui/keys/aloneKeys";
import { plainNumber } from "@/lib/view/number";

interface DataTableProps<Row extends object> {
  /** Short name, unique on the page; begins the table's parameters in the address. */
  readonly id: string;
  /** What the table holds, for screen readers and print. */
  readonly caption: string;
  readonly rows: readonly Row[];
  readonly columns: readonly Column<Row>[];
  readonly rowKey: (row: Row) => string;
  /** Where a row leads, e.g. `/lines/VEL-01`; the as-of day is added. Null: this row leads nowhere. */
  readonly rowHref?: (row: Row) => string | null;
  readonly initialSort?: { readonly key: string; readonly descending: boolean };
  /** Plural noun of the count above the table, e.g. `lines`. */
  readonly noun: string;
  /** Fetches the same rows as a file. */
  readonly exportHref?: string;
  /** More controls, left of the column menu. */
  readonly extra?: ReactNode;
  /** Said in place of the table when there are no rows at all: what to do. */
  readonly empty?: ReactNode;
  /** Small table: no bar above it. */
  readonly bare?: boolean;
}

/** More rows than this scroll inside the table. */
const LONG_FROM = 30;

/** `/` puts the cursor into the first filter of the page, unless something is being typed. */
function useSlash(field: RefObject<HTMLInputElement | null>) {
  useEffect(() => {
    const press = (event: KeyboardEvent) => {
      if (event.key !== "/" || !isAlone(event)) return;
      if (field.current === null || document.querySelector("[data-table-filter]") !== field.current) return;
      event.preventDefault();
      field.current.focus();
    };
    window.addEventListener("keydown", press);
    return () => window.removeEventListener("keydown", press);
  }, [field]);
}

function chosenFilters<Row>(columns: readonly Column<Row>[], state: TableState) {
  return columns.flatMap(({ key, filter }) => {
    const word = state.choices[key];
    return filter === "choice" && word ? [{ id: key, value: word }] : [];
  });
}

/**
 * A table to work in: sort, filter, choose columns, walk by keyboard, follow a row, print.
 *
 * Its columns hold functions, so it is used from a small client component of the page which declares them.
 */
export function DataTable<Row extends object>(props: DataTableProps<Row>) {
  const { id, caption, rows, columns, rowKey, initialSort, noun, bare = false } = props;
  const [state, change] = useTableAddress(id);
  const frame = useRef<HTMLDivElement>(null);
  const searchField = useRef<HTMLInputElement>(null);
  useSlash(searchField);

  const found = useMemo(() => searchRows(rows, columns, state.search), [rows, columns, state.search]);
  const defs = useMemo(() => columns.map(columnDef), [columns]);
  const sort = state.sort ?? initialSort ?? null;
  const shown = visibility(columns, state);
  const table = useTable({
    features,
    columns: defs,
    data: found,
    state: {
      sorting: sort ? [{ id: sort.key, desc: sort.descending }] : [],
      columnFilters: chosenFilters(columns, state),
      columnVisibility: shown,
    },
  });
  const visible = columns.filter((column) => shown[column.key]);
  const body = table.getRowModel().rows.map(({ original }) => ({ key: rowKey(original), row: original }));

  if (rows.length === 0 && props.empty) return props.empty;
  const total = plainNumber(rows.length);
  const nouns = rows.length === 1 ? noun.replace(/s$/, "") : noun;
  const countText =
    body.length === rows.length ? `${total} ${nouns}` : `${plainNumber(body.length)} of ${total} ${nouns}`;
  return (
    <div>
      {bare ? null : (
        <TableBar
          {...{ rows, columns, shown, state, searchField, countText }}
          onChange={change}
          exportHref={props.exportHref}
          extra={props.extra}
        />
      )}
      <div ref={frame} className="table-frame" data-long={body.length > LONG_FROM ? "" : undefined}>
        <table
          className="table"
          data-chosen={state.columns ? "" : undefined}
          aria-rowcount={body.length > VIRTUAL_FROM ? body.length + 1 : undefined}
        >
          <caption className="sr-only">{caption}</caption>
          <TableHead columns={visible} sort={sort} onSort={(next) => change({ sort: next })} />
          <TableBody rows={body} columns={visible} rowHref={props.rowHref} frame={frame} />
          <TableFoot columns={visible} />
        </table>
        {body.length === 0 ? <NoRows noun={noun} filtered={rows.length > 0} /> : null}
      </div>
    </div>
  );
}

function NoRows({ noun, filtered }: { readonly noun: string; readonly filtered: boolean }) {
  return (
    <p className="py-6 text-ink-2">
      {filtered ? `No ${noun} match these filters. Clear a filter to see more.` : `No ${noun} yet.`}
    </p>
  );
}
