"use client";

import { useMemo } from "react";
import type { Column } from "@/app/_ui/DataTable/column";
import { DataTable } from "@/app/_ui/DataTable/DataTable";
import { count, plainNumber, quantity } from "@/lib/view/number";
import { stageView } from "@/lib/view/stage";
import {
  demandWords,
  type LevelRow,
  levelReason,
  levelWords,
  ordered,
  shortOf,
} from "@/lib/view/stockLevels";
import { leadTime } from "@/lib/view/time";

const KINDS = {
  restock: "Restocked",
  retires: "Retires",
  ended: "Cannot be ordered",
  unused: "Not needed here",
} as const satisfies Record<LevelRow["levels"]["kind"], string>;

/** How a level comes about, opened on demand. */
function Arithmetic({ row }: { readonly row: LevelRow }) {
  const { levels, removalRate: rate, leadYears } = row;
  const { leadExposure, reviewExposure, keepExposure, kind } = levels;
  if (kind === "unused") return null;
  return (
    <details>
      <summary className="text-sm">How</summary>
      <ul className="text-sm">
        {kind === "restock" ? (
          <>
            <li>
              Minimum {levels.min}: {demandWords(rate, leadExposure)} over {leadTime(leadYears)}
            </li>
            <li>
              Maximum {levels.max}: {demandWords(rate, reviewExposure)} over the same and a quarter of a year
            </li>
          </>
        ) : (
          <li>
            Keep {levels.keep}: {demandWords(rate, keepExposure)} not made good
          </li>
        )}
        <li>Smallest number with which a failure finds the shelf empty with at most the chance aimed at.</li>
      </ul>
    </details>
  );
}

function orderWords(row: LevelRow): string {
  const pieces = ordered(row);
  if (pieces === null) return "not counted";
  const short = shortOf(row);
  if (row.levels.kind === "restock") return plainNumber(pieces);
  return short === 0 ? "0, blocked" : `0, blocked; ${short} short`;
}

const columns = (asOf: string): readonly Column<LevelRow>[] => [
  {
    ...{ key: "part", header: "Part", filter: "text", width: "9rem" },
    value: ({ part }) => part,
  },
  { ...{ key: "site", header: "Site", filter: "choice", priority: 1 }, value: ({ siteCode }) => siteCode },
  {
    ...{ key: "kind", header: "Kind", filter: "choice", priority: 3 },
    value: ({ levels }) => KINDS[levels.kind],
  },
  {
    ...{ key: "stage", header: "Supply stage", filter: "choice", hidden: true },
    value: ({ stage }) => stageView(stage).name,
  },
  { ...{ key: "units", header: "Installed", align: "end", priority: 3 }, value: ({ units }) => units },
  {
    ...{ key: "usable", header: "Usable", unit: "pieces", align: "end" },
    value: ({ usable }) => usable,
    cell: ({ usable, book }) => (book === null ? "not counted" : quantity(usable)),
  },
  {
    ...{ key: "levels", header: "Min / max", align: "end", priority: 1 },
    value: ({ levels }) => levels.min,
    cell: ({ levels }) => levelWords(levels),
  },
  { ...{ key: "keep", header: "Keep", unit: "pieces", align: "end" }, value: ({ levels }) => levels.keep },
  {
    ...{ key: "order", header: "Order", unit: "pieces", align: "end", priority: 1 },
    value: (row) => ordered(row),
    cell: (row) => <span className={ordered(row) ? "font-semibold" : ""}>{orderWords(row)}</span>,
  },
  {
    ...{ key: "why", header: "Why", filter: "text", priority: 3, width: "20rem" },
    value: (row) => levelReason(row, asOf),
    cell: (row) => (
      <>
        {levelReason(row, asOf)}
        <Arithmetic row={row} />
      </>
    ),
  },
];

interface LevelTableProps {
  readonly rows: readonly LevelRow[];
  readonly asOf: string;
}

/** Levels by part and site; what is to be ordered first. */
export function LevelTable({ rows, asOf }: LevelTableProps) {
  const shown = useMemo(() => columns(asOf), [asOf]);
  return (
    <DataTable
      id="levels"
      caption="Minimum and maximum by part and site"
      noun="levels"
      rows={rows}
      columns={shown}
      rowKey={({ partId, siteCode }) => `${partId} ${siteCode}`}
      rowHref={({ partId }) => `/parts/${partId}`}
      initialSort={{ key: "order", descending: true }}
      empty={<p>{count(0, "part")} installed or on a shelf at your sites.</p>}
    />
  );
}
