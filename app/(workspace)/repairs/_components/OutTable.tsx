"use client";

import { AsOfLink } from "@/app/_ui/AsOfLink";
import { EmptyState } from "@/app/_ui/EmptyState";
import { RowTable } from "@/app/_ui/RowTable";
import { UndoBar } from "@/app/_ui/UndoBar";
import { type Done, useDone } from "@/app/(workspace)/_components/useDone";
import { ChangeRepair } from "@/app/(workspace)/repairs/_components/ChangeRepair";
import { ReceiveUnit } from "@/app/(workspace)/repairs/_components/ReceiveUnit";
import { count, NOT_KNOWN, plainNumber } from "@/lib/view/number";
import type { OutOrder } from "@/lib/view/repair";
import { day } from "@/lib/view/time";

const HEADS = [
  "Order",
  "Part",
  "Serial",
  "Repairer",
  "Fault reported",
  "Sent",
  { text: "Days out", end: true },
  "Expected",
  "State",
  { text: "Change", print: false },
] as const;

interface OutTableProps {
  readonly orders: readonly OutOrder[];
  /** Days since the last return, by order, where it went out again soon. */
  readonly again: Readonly<Record<string, number>>;
  readonly today: string;
}

function expectedWords({ dueOn, expectedOn, usualDays }: OutOrder): string {
  if (dueOn !== null) return day(dueOn);
  return expectedOn === null ? NOT_KNOWN : `${day(expectedOn)}, by the usual ${usualDays} days`;
}

function stateWords({ daysOverdue }: OutOrder): string {
  if (daysOverdue === null) return "no day known";
  return daysOverdue === 0 ? "out" : `${count(daysOverdue, "day")} overdue`;
}

/** Units away, the longest overdue first. */
export function OutTable({ orders, again, today }: OutTableProps) {
  const { done, tell, undo, close } = useDone();
  return (
    <>
      <Orders orders={orders} again={again} today={today} tell={tell} />
      <UndoBar message={done?.message ?? null} {...(done?.undo ? { onUndo: undo } : {})} onClose={close} />
    </>
  );
}

interface OrdersProps extends OutTableProps {
  readonly tell: (done: Done) => void;
}

function Orders({ orders, again, today, tell }: OrdersProps) {
  if (orders.length === 0)
    return (
      <EmptyState title="No unit is out for repair">
        A unit sent out appears here until it is back. Send one out below, or say so when you record the event
        that took it out.
      </EmptyState>
    );
  return (
    <RowTable caption="Units out for repair, the longest overdue first" heads={HEADS}>
      {orders.map((order) => {
        const days = again[order.id];
        return (
          <tr key={order.id}>
            <th scope="row" className="whitespace-nowrap font-semibold">
              {order.siteCode} {order.reference}
            </th>
            <td className="whitespace-nowrap">
              <AsOfLink href={`/parts/${order.partId}`}>{order.part}</AsOfLink>
            </td>
            <td>
              {order.serial ?? NOT_KNOWN}
              {days === undefined ? null : (
                <span className="block font-semibold text-sm">again after {count(days, "day")}</span>
              )}
            </td>
            <td>{order.repairer ?? NOT_KNOWN}</td>
            <td>{order.fault ?? NOT_KNOWN}</td>
            <td className="whitespace-nowrap">{day(order.sentOn)}</td>
            <td data-align="end">{plainNumber(order.daysOut)}</td>
            <td>{expectedWords(order)}</td>
            <td className={(order.daysOverdue ?? 0) > 0 ? "font-semibold" : ""}>{stateWords(order)}</td>
            <td className="no-print">
              {order.mayChange && order.returnedOn === null ? (
                <div className="flex flex-wrap gap-2">
                  <ReceiveUnit order={order} today={today} tell={tell} />
                  <ChangeRepair order={order} tell={tell} />
                </div>
              ) : null}
            </td>
          </tr>
        );
      })}
    </RowTable>
  );
}
