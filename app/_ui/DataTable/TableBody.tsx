import { useVirtualizer } from "@tanstack/react-virtual";
import { type MouseEvent, type RefObject, useEffect, useRef, useState } from "react";
import { flushSync } from "react-dom";
import { AsOfLink } from "@/app/_ui/AsOfLink";
import type { Column } from "@/app/_ui/DataTable/column";
import { useRowWalk } from "@/app/_ui/DataTable/useRowWalk";

export interface BodyRow<Row> {
  readonly key: string;
  readonly row: Row;
}

interface TableBodyProps<Row> {
  readonly rows: readonly BodyRow<Row>[];
  readonly columns: readonly Column<Row>[];
  readonly rowHref?: ((row: Row) => string | null) | undefined;
  readonly frame: RefObject<HTMLDivElement | null>;
}

/** More rows than this are drawn only where they are seen; printing draws all. */
export const VIRTUAL_FROM = 200;
const ROW_HEIGHT = 32;

function show<Row>(column: Column<Row>, row: Row) {
  if (column.cell) return column.cell(row);
  const value = column.value(row);
  return value === null ? <span className="text-ink-3">not known</span> : String(value);
}

function Cells<Row>({
  row,
  columns,
  href,
}: {
  row: Row;
  columns: readonly Column<Row>[];
  href: string | null;
}) {
  return columns.map((column, place) => {
    if (place > 0)
      return (
        <td key={column.key} data-align={column.align} data-priority={column.priority ?? 2}>
          {show(column, row)}
        </td>
      );
    return (
      <th key={column.key} scope="row" data-align={column.align} data-priority={1}>
        {href === null ? (
          show(column, row)
        ) : (
          <AsOfLink href={href} className="row-link" data-row-link="">
            {show(column, row)}
          </AsOfLink>
        )}
      </th>
    );
  });
}

/** While the page is printed every row must be in the document. */
function usePrinting(): boolean {
  const [printing, setPrinting] = useState(false);
  useEffect(() => {
    const start = () => flushSync(() => setPrinting(true));
    const stop = () => setPrinting(false);
    window.addEventListener("beforeprint", start);
    window.addEventListener("afterprint", stop);
    return () => {
      window.removeEventListener("beforeprint", start);
      window.removeEventListener("afterprint", stop);
    };
  }, []);
  return printing;
}

function openRow(event: MouseEvent<HTMLElement>) {
  const target = event.target as HTMLElement;
  if (target.closest("a, button, input, select, label, summary")) return;
  if (window.getSelection()?.toString()) return;
  target.closest("tr")?.querySelector<HTMLElement>("[data-row-link]")?.click();
}

/** Rows; arrow keys move between row links, Enter opens, a click anywhere on a linked row opens too. */
export function TableBody<Row>({ rows, columns, rowHref, frame }: TableBodyProps<Row>) {
  const printing = usePrinting();
  const virtual = rows.length > VIRTUAL_FROM && !printing;
  const virtualizer = useVirtualizer({
    count: rows.length,
    getScrollElement: () => frame.current,
    estimateSize: () => ROW_HEIGHT,
    overscan: 15,
    // The sticky head and foot cover this much of the frame.
    scrollPaddingEnd: 90,
    enabled: virtual,
    initialRect: { width: 1000, height: 640 },
  });
  const items = virtualizer.getVirtualItems();
  const first = virtual ? (items[0]?.index ?? 0) : 0;
  const end = virtual ? (items.at(-1)?.index ?? -1) + 1 : rows.length;
  const above = virtual ? (items[0]?.start ?? 0) : 0;
  const below = virtual ? virtualizer.getTotalSize() - (items.at(-1)?.end ?? 0) : 0;

  const body = useRef<HTMLTableSectionElement>(null);
  const walk = useRowWalk({
    body,
    last: rows.length - 1,
    scrollTo: virtual ? (index) => virtualizer.scrollToIndex(index) : null,
  });

  return (
    <tbody ref={body} onClick={openRow} onKeyDown={walk}>
      {above > 0 ? <Gap height={above} span={columns.length} /> : null}
      {rows.slice(first, end).map(({ key, row }, offset) => {
        const index = first + offset;
        const href = rowHref?.(row) ?? null;
        return (
          <tr
            key={key}
            ref={virtual ? virtualizer.measureElement : undefined}
            data-index={index}
            data-fifth={index % 5 === 4 ? "" : undefined}
            data-linked={href === null ? undefined : ""}
            aria-rowindex={virtual ? index + 2 : undefined}
          >
            <Cells row={row} columns={columns} href={href} />
          </tr>
        );
      })}
      {below > 0 ? <Gap height={below} span={columns.length} /> : null}
    </tbody>
  );
}

function Gap({ height, span }: { readonly height: number; readonly span: number }) {
  return (
    <tr>
      <td colSpan={span} style={{ height, padding: 0, border: 0 }} />
    </tr>
  );
}
