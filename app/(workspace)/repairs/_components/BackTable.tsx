"use client";

import { useMemo } from "react";
import { Button } from "@/app/_ui/Button";
import type { Column } from "@/app/_ui/DataTable/column";
import { DataTable } from "@/app/_ui/DataTable/DataTable";
import { UndoBar } from "@/app/_ui/UndoBar";
import { useDone } from "@/app/(workspace)/_components/useDone";
import { takeThisRepairBack } from "@/app/(workspace)/repairs/actions";
import { daysBetween } from "@/lib/kernel/isoDate";
import { exactMoney } from "@/lib/view/format";
import { count, NOT_KNOWN, plainNumber } from "@/lib/view/number";
import type { RepairOrder } from "@/lib/view/repair";
import { day } from "@/lib/view/time";

type Again = Readonly<Record<string, number>>;

const daysAway = ({ sentOn, returnedOn }: RepairOrder) =>
  returnedOn === null ? null : daysBetween(sentOn, returnedOn);

const columns = (again: Again): readonly Column<RepairOrder>[] => [
  {
    ...{ key: "order", header: "Order", filter: "text" },
    value: ({ siteCode, reference }) => `${siteCode} ${reference}`,
  },
  {
    ...{ key: "part", header: "Part", filter: "choice", priority: 1 },
    value: ({ part }) => part,
    cell: ({ part }) => <span className="whitespace-nowrap">{part}</span>,
  },
  {
    ...{ key: "serial", header: "Serial", filter: "text" },
    value: ({ serial }) => serial,
    cell: ({ id, serial }) => (
      <>
        {serial ?? NOT_KNOWN}
        {again[id] === undefined ? null : (
          <span className="block font-semibold text-sm">again after {count(again[id], "day")}</span>
        )}
      </>
    ),
  },
  { ...{ key: "repairer", header: "Repairer", filter: "choice" }, value: ({ repairer }) => repairer },
  {
    ...{ key: "finding", header: "Finding", filter: "choice", priority: 1 },
    value: ({ finding }) => finding,
  },
  {
    ...{ key: "back", header: "Back on", priority: 1 },
    value: ({ returnedOn }) => returnedOn,
    cell: ({ returnedOn }) => day(returnedOn),
  },
  {
    ...{ key: "days", header: "Days away", align: "end" },
    value: daysAway,
    cell: (order) => plainNumber(daysAway(order) ?? 0),
  },
  {
    ...{ key: "warranty", header: "Warranty until" },
    value: ({ warrantyUntilOn }) => warrantyUntilOn,
    cell: ({ warrantyUntilOn }) => (warrantyUntilOn === null ? "none recorded" : day(warrantyUntilOn)),
  },
  {
    ...{ key: "fault", header: "Fault reported", hidden: true },
    value: ({ fault }) => fault,
    cell: ({ fault }) => fault ?? NOT_KNOWN,
  },
];

const COST: Column<RepairOrder> = {
  ...{ key: "cost", header: "Cost", align: "end" },
  value: ({ cost }) => (cost === null ? null : Number(cost)),
  cell: ({ cost, costCurrency }) => exactMoney(cost, costCurrency ?? "EUR"),
};

interface BackTableProps {
  readonly orders: readonly RepairOrder[];
  readonly again: Again;
  readonly showsCost: boolean;
}

/** Units that came back, the latest first. */
export function BackTable({ orders, again, showsCost }: BackTableProps) {
  const { done, tell, undo, close } = useDone();
  const shown = useMemo((): readonly Column<RepairOrder>[] => {
    const takeBack = async ({ id: orderId, version, reference }: RepairOrder) => {
      const made = await takeThisRepairBack({ orderId, version });
      tell({ message: made.ok ? `${reference} is out again.` : made.error.reason });
    };
    return [
      ...columns(again),
      ...(showsCost ? [COST] : []),
      {
        ...{ key: "undo", header: "Take back" },
        value: () => null,
        cell: (order) =>
          order.mayChange && order.mayUndo ? (
            <Button kind="quiet" onClick={() => takeBack(order)}>
              Take the return back
            </Button>
          ) : null,
      },
    ];
  }, [again, showsCost, tell]);
  return (
    <>
      <DataTable
        id="back"
        caption="Units that came back from repair"
        noun="repairs"
        rows={orders}
        columns={shown}
        rowKey={({ id }) => id}
        initialSort={{ key: "back", descending: true }}
        empty={<p>No unit has come back yet.</p>}
      />
      <UndoBar message={done?.message ?? null} {...(done?.undo ? { onUndo: undo } : {})} onClose={close} />
    </>
  );
}
