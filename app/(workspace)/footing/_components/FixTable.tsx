"use client";

import type { Column } from "@/app/_ui/DataTable/column";
import { DataTable } from "@/app/_ui/DataTable/DataTable";
import { EmptyState } from "@/app/_ui/EmptyState";
import { money } from "@/lib/view/format";
import { moveWords, type NamedFix } from "@/lib/view/nextFix";
import { plainNumber } from "@/lib/view/number";

const perHour = (value: number | null, { hours }: NamedFix) => (value === null ? null : value / hours);

const PLAIN: readonly Column<NamedFix>[] = [
  { key: "rank", header: "Order", align: "end", value: ({ rank }) => rank, width: "4rem" },
  {
    ...{ key: "what", header: "What to find out", filter: "text", width: "16rem", priority: 1 },
    value: ({ what }) => what,
    cell: ({ what, moves }) => (
      <>
        {what}
        <span className="block text-ink-2 text-xs">{moves.slice(0, 4).map(moveWords).join(" · ")}</span>
        {moves.length > 4 ? (
          <span className="block text-ink-2 text-xs">and {plainNumber(moves.length - 4)} more lines</span>
        ) : null}
      </>
    ),
  },
  {
    ...{ key: "hours", header: "Effort", unit: "h", align: "end" },
    value: ({ hours }) => hours,
    cell: ({ hours }) => plainNumber(hours, 1),
  },
  {
    ...{ key: "cross", header: "Lines over the cut", align: "end" },
    value: ({ crossings }) => crossings,
  },
  {
    ...{ key: "places", header: "Places moved", unit: "per hour", align: "end" },
    value: (fix) => perHour(fix.places, fix),
    cell: (fix) => (
      <>
        {plainNumber(fix.places / fix.hours, 1)}
        <span className="block text-ink-2 text-xs">{plainNumber(fix.places)} in all</span>
      </>
    ),
  },
];

const MONEY: Column<NamedFix> = {
  ...{
    key: "money",
    header: "From not knowing",
    unit: "€ a year per hour, at most",
    align: "end",
    priority: 1,
  },
  value: (fix) => perHour(fix.unknownLoss, fix),
  cell: (fix) =>
    fix.unknownLoss === null ? (
      <span className="text-ink-2">not known</span>
    ) : (
      <>
        {money(fix.unknownLoss / fix.hours)}
        <span className="block text-ink-2 text-xs">{money(fix.unknownLoss)} in all</span>
      </>
    ),
};

const COLUMNS = [...PLAIN, MONEY];

interface FixTableProps {
  readonly fixes: readonly NamedFix[];
  readonly showsAmounts: boolean;
}

/** What to find out next, the most for an hour's work first; a row opens where it is done. */
export function FixTable({ fixes, showsAmounts }: FixTableProps) {
  return (
    <DataTable
      id="fixes"
      caption="Next best fixes"
      noun="fixes"
      rows={fixes}
      columns={showsAmounts ? COLUMNS : PLAIN}
      rowKey={({ rank }) => String(rank)}
      rowHref={({ href }) => href}
      empty={
        <EmptyState title="Nothing open that a figure waits for">
          No unknown of these lines moves a place of the ranking or brings a loss from not knowing.
        </EmptyState>
      }
    />
  );
}
