import { RowTable } from "@/app/_ui/RowTable";
import type { DocTable } from "@/lib/view/planRequest";
import { cellText } from "@/lib/view/requestWords";

/** The tables of a document, as they also stand in its file. */
export function DocTables({ tables }: { readonly tables: readonly DocTable[] }) {
  return tables.map(({ title, columns, rows }) => (
    <section key={title} aria-label={title} className="mt-5">
      <h3 className="mb-1 font-semibold">{title}</h3>
      <RowTable
        caption={title}
        heads={columns.map((column) => ({ text: column.title, end: column.kind === "number" }))}
      >
        {rows.map((row) => (
          <tr key={row.join("|")}>
            {row.map((value, i) => {
              const column = columns[i];
              return (
                <td key={column?.title} data-align={column?.kind === "number" ? "end" : undefined}>
                  {cellText(value, column)}
                </td>
              );
            })}
          </tr>
        ))}
      </RowTable>
    </section>
  ));
}
