import { AsOfLink } from "@/app/_ui/AsOfLink";
import { SheetCell } from "@/app/(workspace)/report/_components/SheetCell";
import { cellsOf, columnShares, spanScale, standsAtEnd } from "@/lib/view/reportCell";
import type { ReportBlock, ReportList, ReportTable } from "@/lib/view/reportDocument";

/** A titled part of a report: a table or a numbered list. */
export function SheetBlock({ block }: { readonly block: ReportBlock }) {
  return block.kind === "table" ? <Table table={block} /> : <List list={block} />;
}

function Table({ table }: { readonly table: ReportTable }) {
  const scale = spanScale(table);
  return (
    <div data-half={table.half || undefined}>
      <h2 className="mb-1 font-semibold">{table.title}</h2>
      <table className="table">
        <caption className="sr-only">{table.title}</caption>
        <colgroup>
          {columnShares(table).map((share, place) => (
            <col key={table.columns[place]?.title} style={{ width: `${100 * share}%` }} />
          ))}
        </colgroup>
        <thead>
          <tr>
            {table.columns.map(({ title, kind }) => (
              <th
                key={title}
                scope="col"
                className="label"
                data-align={standsAtEnd(kind) ? "end" : undefined}
              >
                {title}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {table.rows.map((row) => (
            <tr key={row.key}>
              {cellsOf(table, row).map(({ column: { title, kind }, cell, href }, place) => {
                const Cell = place === 0 ? "th" : "td";
                return (
                  <Cell
                    key={title}
                    scope={place === 0 ? "row" : undefined}
                    data-align={standsAtEnd(kind) ? "end" : undefined}
                  >
                    <SheetCell cell={cell} href={href} scale={scale} />
                  </Cell>
                );
              })}
            </tr>
          ))}
          {table.rows.length === 0 ? (
            <tr>
              <td colSpan={table.columns.length}>{table.none}</td>
            </tr>
          ) : null}
        </tbody>
      </table>
      {table.note === null ? null : <p className="report-note mt-1">{table.note}</p>}
    </div>
  );
}

function List({ list }: { readonly list: ReportList }) {
  return (
    <div data-half={list.half || undefined}>
      <h2 className="mb-1 font-semibold">{list.title}</h2>
      {list.items.length === 0 ? <p className="text-sm">{list.none}</p> : null}
      <ol className="list-decimal pl-5 text-sm">
        {list.items.map(({ text, href }) => (
          <li key={text}>
            {href === null ? (
              text
            ) : (
              <AsOfLink href={href} className="report-link">
                {text}
              </AsOfLink>
            )}
          </li>
        ))}
      </ol>
      {list.note === null ? null : <p className="report-note">{list.note}</p>}
    </div>
  );
}
