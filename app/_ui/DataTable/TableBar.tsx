import { type ReactNode, type RefObject, useId } from "react";
import { Button } from "@/app/_ui/Button";
import { ColumnMenu } from "@/app/_ui/DataTable/ColumnMenu";
import { type Column, choicesOf } from "@/app/_ui/DataTable/column";
import type { TableState } from "@/app/_ui/DataTable/tableAddress";

interface TableBarProps<Row> {
  readonly rows: readonly Row[];
  readonly columns: readonly Column<Row>[];
  readonly shown: Readonly<Record<string, boolean>>;
  readonly state: TableState;
  readonly onChange: (change: Partial<TableState>) => void;
  readonly searchField: RefObject<HTMLInputElement | null>;
  readonly exportHref?: string | undefined;
  readonly countText: string;
  readonly extra?: ReactNode;
}

function ChoiceFilter<Row>({
  column,
  rows,
  word,
  onChange,
}: {
  readonly column: Column<Row>;
  readonly rows: readonly Row[];
  readonly word: string;
  readonly onChange: (word: string) => void;
}) {
  return (
    <select
      aria-label={`Show only ${column.header}`}
      className="input w-auto max-w-52"
      value={word}
      onChange={(event) => onChange(event.target.value)}
    >
      <option value="">{`${column.header}: all`}</option>
      {choicesOf(column, rows).map((choice) => (
        <option key={choice} value={choice}>
          {choice}
        </option>
      ))}
    </select>
  );
}

/** What stands above a table: search, choice filters, count, columns, export. */
export function TableBar<Row>(props: TableBarProps<Row>) {
  const { rows, columns, shown, state, onChange, searchField, exportHref, countText, extra } = props;
  const id = useId();
  const searchable = columns.some((column) => column.filter === "text");
  const filtered = state.search !== "" || Object.keys(state.choices).length > 0;
  return (
    <div className="no-print mb-2 flex flex-wrap items-center gap-2">
      {searchable ? (
        <>
          <label htmlFor={id} className="sr-only">
            Filter rows
          </label>
          <input
            ref={searchField}
            id={id}
            type="search"
            data-table-filter=""
            className="input w-52 max-sm:w-full"
            placeholder="Filter rows, key /"
            value={state.search}
            onChange={(event) => onChange({ search: event.target.value })}
          />
        </>
      ) : null}
      {columns
        .filter((column) => column.filter === "choice")
        .map((column) => (
          <ChoiceFilter
            key={column.key}
            column={column}
            rows={rows}
            word={state.choices[column.key] ?? ""}
            onChange={(word) => onChange({ choices: { ...state.choices, [column.key]: word } })}
          />
        ))}
      {filtered ? (
        <Button kind="quiet" onClick={() => onChange({ search: "", choices: {} })}>
          Clear filters
        </Button>
      ) : null}
      <p role="status" className="text-ink-2 text-sm">
        {countText}
      </p>
      <div className="ml-auto flex flex-wrap items-center gap-2">
        {extra}
        <ColumnMenu columns={columns} shown={shown} onChange={(keys) => onChange({ columns: keys })} />
        {exportHref === undefined ? null : (
          <a href={exportHref} className="button" download>
            Export
          </a>
        )}
      </div>
    </div>
  );
}
