import type { ReactNode } from "react";

/** A column's title; numbers stand at the end of their cells, and so does the title over them. */
export type Head = string | { readonly text: string; readonly end?: boolean; readonly print?: boolean };

interface RowTableProps {
  /** What the table holds; read out, not drawn. */
  readonly caption: string;
  readonly heads: readonly Head[];
  /** The rows, as `tr` elements. */
  readonly children: ReactNode;
}

/** A plain table for rows that are neither sorted nor filtered; a long list is a `DataTable`. */
export function RowTable({ caption, heads, children }: RowTableProps) {
  return (
    <div className="table-frame">
      <table className="table">
        <caption className="sr-only">{caption}</caption>
        <thead>
          <tr>
            {heads.map((head) => {
              const { text, end = false, print = true } = typeof head === "string" ? { text: head } : head;
              return (
                <th
                  key={text}
                  scope="col"
                  className={print ? "label" : "label no-print"}
                  data-align={end ? "end" : undefined}
                >
                  {text}
                </th>
              );
            })}
          </tr>
        </thead>
        <tbody>{children}</tbody>
      </table>
    </div>
  );
}
