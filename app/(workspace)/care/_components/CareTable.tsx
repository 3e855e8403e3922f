"use client";

import { useMemo } from "react";
import type { Column } from "@/app/_ui/DataTable/column";
import { DataTable } from "@/app/_ui/DataTable/DataTable";
import { EmptyState } from "@/app/_ui/EmptyState";
import { UndoBar } from "@/app/_ui/UndoBar";
import { useDone } from "@/app/(workspace)/_components/useDone";
import { RecordCare } from "@/app/(workspace)/care/_components/RecordCare";
import { itemClassName } from "@/lib/view/linePart";
import { plainNumber } from "@/lib/view/number";
import { stockStateName } from "@/lib/view/partShelf";
import { type CareLot, careStateName, careWords } from "@/lib/view/storageCare";
import { day } from "@/lib/view/time";

const columns = (asOf: string): readonly Column<CareLot>[] => [
  { ...{ key: "bin", header: "Bin", filter: "text" }, value: ({ siteCode, bin }) => `${siteCode} ${bin}` },
  {
    ...{ key: "part", header: "Part", filter: "text", priority: 1 },
    value: ({ part, revision }) => `${part} ${revision}`.trim(),
  },
  { ...{ key: "site", header: "Site", filter: "choice", hidden: true }, value: ({ siteCode }) => siteCode },
  {
    ...{ key: "class", header: "Class", filter: "choice", priority: 3 },
    value: ({ itemClass }) => itemClassName(itemClass),
  },
  {
    ...{ key: "pieces", header: "Pieces", align: "end" },
    value: ({ quantity }) => quantity,
    cell: ({ quantity }) => (quantity === null ? "not counted" : plainNumber(quantity)),
  },
  {
    ...{ key: "state", header: "State", filter: "choice", priority: 3 },
    value: ({ state }) => stockStateName(state),
  },
  { ...{ key: "care", header: "What to do", filter: "choice" }, value: (lot) => careWords(lot, asOf) },
  {
    ...{ key: "last", header: "Last done", priority: 3 },
    value: ({ lastOn }) => lastOn,
    cell: ({ lastOn }) => day(lastOn),
  },
  {
    ...{ key: "waits", header: "Waits", filter: "choice", priority: 1 },
    value: ({ care }) => careStateName(care),
    cell: ({ care }) => (
      <span className={care === "overdue" ? "font-semibold" : ""}>{careStateName(care)}</span>
    ),
  },
  {
    ...{ key: "due", header: "Due" },
    value: ({ dueOn }) => dueOn,
    cell: ({ dueOn }) => day(dueOn),
  },
];

interface CareTableProps {
  readonly lots: readonly CareLot[];
  readonly asOf: string;
  readonly today: string;
  readonly by: string;
}

/** Lots that need care, the most urgent first. */
export function CareTable({ lots, asOf, today, by }: CareTableProps) {
  const { done, tell, undo, close } = useDone();
  const shown = useMemo(
    (): readonly Column<CareLot>[] => [
      ...columns(asOf),
      {
        ...{ key: "record", header: "Record", priority: 1 },
        value: () => null,
        cell: (lot) =>
          lot.mayChange && lot.quantity !== null ? (
            <RecordCare lot={lot} today={today} by={by} tell={tell} />
          ) : null,
      },
    ],
    [asOf, today, by, tell],
  );
  return (
    <>
      <DataTable
        id="care"
        caption="Lots that need care, the most urgent first"
        noun="lots"
        rows={lots}
        columns={shown}
        rowKey={({ lotId }) => lotId}
        empty={
          <EmptyState title="Nothing on the shelves needs care">
            Lots of classes with an interval appear here. Import the stock of a site, or set an interval
            below.
          </EmptyState>
        }
      />
      <UndoBar message={done?.message ?? null} {...(done?.undo ? { onUndo: undo } : {})} onClose={close} />
    </>
  );
}
