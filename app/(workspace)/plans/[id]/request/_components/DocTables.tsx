import { RowTable } from "@/app/_ui/RowTable";
import { NOT_KNOWN, plainNumber } from "@/lib/view/number";
import type { DocTable } from "@/lib/view/planRequest";
import { day } from "@/lib/view/time";

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
                  {shown(value, column?.kind ?? "text", column?.title ?? "")}
                </td>
              );
            })}
          </tr>
        ))}
      </RowTable>
    </section>
  ));
}

function shown(value: string | number | null, kind: "text" | "number" | "date", title: string): string {
  if (value === null) return kind === "text" ? "" : NOT_KNOWN;
  if (kind === "date") return day(String(value));
  if (typeof value === "number") return title === "Year" ? String(value) : plainNumber(value);
  return value;
}
