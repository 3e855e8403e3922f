import type { Column } from "@/app/_ui/DataTable/column";
import type { TableState } from "@/app/_ui/DataTable/tableAddress";
import { nextSort } from "@/app/_ui/DataTable/tableModel";
import { AXIS_SORTS, type AxisFilter, type ListedAxis } from "@/lib/view/axisList";

interface AxisHeadProps {
  readonly columns: readonly Column<ListedAxis>[];
  readonly sort: Pick<AxisFilter, "sort" | "descending">;
  readonly onSort: (sort: TableState["sort"]) => void;
}

/** Column heads; a head is a button only where the server can sort by its column. */
export function AxisHead({ columns, sort, onSort }: AxisHeadProps) {
  return (
    <thead>
      <tr>
        {columns.map((column, place) => (
          <th
            key={column.key}
            scope="col"
            className="label"
            data-align={column.align}
            data-priority={place === 0 ? 1 : (column.priority ?? 2)}
            aria-sort={directionOf(column.key, sort)}
            style={column.width === undefined ? undefined : { minWidth: column.width }}
          >
            <HeadWords column={column} sort={sort} onSort={onSort} />
          </th>
        ))}
      </tr>
    </thead>
  );
}

const MARKS = { ascending: " ▲", descending: " ▼", none: "" } as const;

function directionOf(
  key: string,
  { sort, descending }: AxisHeadProps["sort"],
): keyof typeof MARKS | undefined {
  if (!AXIS_SORTS.some((one) => one === key)) return undefined;
  if (sort !== key) return "none";
  return descending ? "descending" : "ascending";
}

interface HeadWordsProps extends Pick<AxisHeadProps, "sort" | "onSort"> {
  readonly column: Column<ListedAxis>;
}

function HeadWords({ column: { key, header, unit }, sort, onSort }: HeadWordsProps) {
  const direction = directionOf(key, sort);
  const words = (
    <span>
      <span>{header}</span>
      {unit === undefined ? null : <span className="unit block text-ink-2">{unit}</span>}
    </span>
  );
  if (direction === undefined) return words;
  const current = direction === "none" ? null : { key, descending: sort.descending };
  return (
    <button type="button" className="sort-button" onClick={() => onSort(nextSort(key, false, current))}>
      {words}
      <span aria-hidden="true">{MARKS[direction]}</span>
    </button>
  );
}
