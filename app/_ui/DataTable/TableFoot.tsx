import type { Column } from "@/app/_ui/DataTable/column";

/** Totals and notes under the columns; nothing when no column has any. */
export function TableFoot<Row>({ columns }: { readonly columns: readonly Column<Row>[] }) {
  if (columns.every((column) => column.foot === undefined)) return null;
  return (
    <tfoot>
      <tr>
        {columns.map((column, place) => (
          <td
            key={column.key}
            data-align={column.align}
            data-priority={place === 0 ? 1 : (column.priority ?? 2)}
          >
            {column.foot}
          </td>
        ))}
      </tr>
    </tfoot>
  );
}
