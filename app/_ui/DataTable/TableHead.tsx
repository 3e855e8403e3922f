import type { CSSProperties } from "react";
import type { Column } from "@/app/_ui/DataTable/column";
import type { TableState } from "@/app/_ui/DataTable/tableAddress";
import { nextSort } from "@/app/_ui/DataTable/tableModel";

interface TableHeadProps<Row> {
  readonly columns: readonly Column<Row>[];
  readonly sort: TableState["sort"];
  readonly onSort: (sort: TableState["sort"]) => void;
}

function order(key: string, sort: TableState["sort"]): "ascending" | "descending" | "none" {
  if (sort?.key !== key) return "none";
  return sort.descending ? "descending" : "ascending";
}

const SHAPES = { ascending: "M0 7L4 1L8 7Z", descending: "M0 1L8 1L4 7Z" } as const;

function SortMark({ direction }: { readonly direction: "ascending" | "descending" | "none" }) {
  if (direction === "none") return <span className="inline-block w-2" />;
  return (
    <svg viewBox="0 0 8 8" className="mb-[0.25em] size-2 shrink-0" aria-hidden="true">
      <path d={SHAPES[direction]} fill="var(--ink)" />
    </svg>
  );
}

/** Column heads: name, unit and a button that sorts. */
export function TableHead<Row>({ columns, sort, onSort }: TableHeadProps<Row>) {
  return (
    <thead>
      <tr>
        {columns.map((column, place) => {
          const direction = order(column.key, sort);
          const numeric = column.align === "end";
          return (
            <th
              key={column.key}
              scope="col"
              className="label"
              data-align={column.align}
              data-priority={place === 0 ? 1 : (column.priority ?? 2)}
              aria-sort={direction}
              style={column.width === undefined ? undefined : ({ "--least": column.width } as CSSProperties)}
            >
              <button
                type="button"
                className="sort-button"
                onClick={() => onSort(nextSort(column.key, numeric, sort))}
              >
                {numeric ? <SortMark direction={direction} /> : null}
                <span>
                  <span>{column.header}</span>
                  {column.unit ? <span className="unit block text-ink-2">{column.unit}</span> : null}
                </span>
                {numeric ? null : <SortMark direction={direction} />}
              </button>
            </th>
          );
        })}
      </tr>
    </thead>
  );
}
