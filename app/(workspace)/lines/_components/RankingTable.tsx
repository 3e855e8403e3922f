"use client";

import { useSearchParams } from "next/navigation";
import { useMemo } from "react";
import { wordOf } from "@/app/_ui/DataTable/column";
import { DataTable } from "@/app/_ui/DataTable/DataTable";
import { readAddress } from "@/app/_ui/DataTable/tableAddress";
import { searchRows } from "@/app/_ui/DataTable/tableModel";
import { lineColumns } from "@/app/(workspace)/lines/_components/lineColumns";
import { RankToggle } from "@/app/(workspace)/lines/_components/RankToggle";
import { drawnTotalOf } from "@/lib/view/drawnTotals";
import type { RankingOf } from "@/lib/view/lineRanking";
import { rankedBy, sumLines } from "@/lib/view/lineTotals";
import { type PackedRanking, type RankingRow, unpackRanking } from "@/lib/view/rankingRows";

const TABLE = "lines";

/** The lines the table shows under its filters: what its foot adds up. */
function useShownLines(ranking: RankingOf<RankingRow>, by: ReturnType<typeof rankedBy>): RankingRow[] {
  const params = useSearchParams();
  return useMemo(() => {
    const { search, choices } = readAddress(TABLE, params);
    const columns = lineColumns({ by, ranking, totals: sumLines([]) });
    const chosen = columns.filter((column) => column.filter === "choice" && choices[column.key]);
    return searchRows(ranking.lines, columns, search).filter((line) =>
      chosen.every((column) => wordOf(column, line) === choices[column.key]),
    );
  }, [params, ranking, by]);
}

/** The ranking as a table to sort, filter and follow; its foot is the sum of the lines shown. */
export function RankingTable({ packed }: { readonly packed: PackedRanking }) {
  const ranking = useMemo(() => unpackRanking(packed), [packed]);
  const by = rankedBy(useSearchParams().get("by"));
  const shown = useShownLines(ranking, by);
  const columns = useMemo(() => {
    const totals = sumLines(shown, drawnTotalOf(shown, ranking));
    return lineColumns({ by, ranking, totals });
  }, [by, ranking, shown]);
  return (
    <DataTable
      id={TABLE}
      caption={`Lines by ${by === "loss" ? "stop loss" : "risk score"}`}
      rows={ranking.lines}
      columns={columns}
      rowKey={(line) => line.code}
      rowHref={(line) => `/lines/${line.code}`}
      initialSort={{ key: by === "loss" ? "money" : "score-rank", descending: false }}
      noun="lines"
      extra={<RankToggle by={by} table={TABLE} />}
    />
  );
}
