"use client";

import { usePathname, useRouter } from "next/navigation";
import { useEffect, useRef } from "react";
import { Button } from "@/app/_ui/Button";
import { ColumnMenu } from "@/app/_ui/DataTable/ColumnMenu";
import { TableBody } from "@/app/_ui/DataTable/TableBody";
import { type TableState, writeAddress } from "@/app/_ui/DataTable/tableAddress";
import { visibility } from "@/app/_ui/DataTable/tableModel";
import { useTableAddress } from "@/app/_ui/DataTable/useTableAddress";
import { AxisHead } from "@/app/(workspace)/axes/_components/AxisHead";
import { axisColumns } from "@/app/(workspace)/axes/_components/axisColumns";
import { useMoreAxes } from "@/app/(workspace)/axes/_components/useMoreAxes";
import type { AxisFilter, AxisPage } from "@/lib/view/axisList";

interface AxisTableProps {
  /** The page's query, sent on with each further page. */
  readonly question: string;
  readonly filter: AxisFilter;
  readonly first: AxisPage;
}

/** This far from the end of what is there the next page is fetched. */
const AHEAD_PX = 1500;

/** Axes as a list without end: pages are fetched while it is scrolled or walked through, sorted by the server. */
export function AxisTable({ question, filter, first }: AxisTableProps) {
  const frame = useRef<HTMLDivElement>(null);
  const router = useRouter();
  const pathname = usePathname();
  const { axes, state, loadMore } = useMoreAxes(question, first);
  const [chosen, choose] = useTableAddress("axes");

  const loadNear = () => {
    const view = frame.current;
    if (view === null || state !== "more") return;
    if (view.scrollHeight - view.scrollTop - view.clientHeight < AHEAD_PX) loadMore();
  };
  // A page that was added may leave the end as near as before.
  useEffect(loadNear);

  const sortBy = (sort: TableState["sort"]) =>
    router.replace(`${pathname}?${writeAddress("axes", window.location.search, { ...chosen, sort })}`, {
      scroll: false,
    });
  const shown = visibility(axisColumns, chosen);
  const columns = axisColumns.filter(({ key }) => shown[key]);

  if (axes.length === 0)
    return <p className="py-6 text-ink-2">No axis matches. Clear a filter, or load an axis survey.</p>;
  return (
    <>
      <div className="no-print mb-2 flex justify-end">
        <ColumnMenu columns={axisColumns} shown={shown} onChange={(keys) => choose({ columns: keys })} />
      </div>
      <div ref={frame} className="table-frame" data-long="" onScroll={loadNear}>
        <table className="table" data-chosen={chosen.columns ? "" : undefined}>
          <caption className="sr-only">Axes</caption>
          <AxisHead columns={columns} sort={filter} onSort={sortBy} />
          <TableBody
            rows={axes.map((row) => ({ key: row.id, row }))}
            columns={columns}
            rowHref={({ machineId, axisCode }) =>
              `/machines/${machineId}#axis-${encodeURIComponent(axisCode)}`
            }
            frame={frame}
          />
        </table>
      </div>
      <div className="flex items-baseline gap-3 py-1.5 text-ink-2 text-sm">
        <span role="status">
          {state === "loading" ? "Fetching more…" : null}
          {state === "failed" ? "The next rows did not come." : null}
        </span>
        {state === "failed" ? (
          <Button kind="quiet" onClick={loadMore}>
            Try again
          </Button>
        ) : null}
      </div>
    </>
  );
}
