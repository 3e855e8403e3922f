"use client";

import { useMemo } from "react";
import { DataTable } from "@/app/_ui/DataTable/DataTable";
import { driverColumns } from "@/app/(workspace)/lines/[code]/_components/driverColumns";
import type { LineDossier } from "@/lib/view/lineDossier";

type DriversTableProps = Pick<LineDossier, "code" | "drivers" | "result" | "showsAmounts">;

/** The pools on a line, those that cost most first; their sums are the line's figures. */
export function DriversTable({ code, drivers, result, showsAmounts }: DriversTableProps) {
  const columns = useMemo(() => driverColumns({ code, result, showsAmounts }), [code, result, showsAmounts]);
  return (
    <DataTable
      id="drivers"
      caption={
        showsAmounts ? `What drives the loss and the score of ${code}` : `What drives the score of ${code}`
      }
      rows={drivers}
      columns={columns}
      rowKey={(driver) => driver.poolId}
      rowHref={(driver) => (driver.part === null ? null : `/parts/${driver.part.id}`)}
      initialSort={{ key: showsAmounts ? "loss" : "points", descending: true }}
      noun="parts"
      empty={<p>No items are recorded on this line. Import its asset register.</p>}
    />
  );
}
