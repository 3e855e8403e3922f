import type { ReactNode } from "react";

interface SheetTableProps {
  readonly title: string;
  readonly heads: readonly { readonly text: string; readonly end?: boolean }[];
  readonly children: ReactNode;
  /** Small text under the table. */
  readonly note?: ReactNode;
}

/** A titled table of the report. */
export function SheetTable({ title, heads, children, note }: SheetTableProps) {
  return (
    <div>
      <h2 className="mb-1 font-semibold">{title}</h2>
      <table className="table">
        <caption className="sr-only">{title}</caption>
        <thead>
          <tr>
            {heads.map(({ text, end }) => (
              <th key={text} scope="col" className="label" data-align={end ? "end" : undefined}>
                {text}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>{children}</tbody>
      </table>
      {note ? <p className="report-note mt-1">{note}</p> : null}
    </div>
  );
}
