"use client";

import { useMemo } from "react";
import type { Column } from "@/app/_ui/DataTable/column";
import { DataTable } from "@/app/_ui/DataTable/DataTable";
import { Delta } from "@/app/_ui/Delta";
import type { MovedLine, MovedTotal } from "@/lib/risk/whatMoved";
import { moneySpan } from "@/lib/view/format";
import { moneyKind, movedSteps, signedEuros } from "@/lib/view/moved";
import { NOT_KNOWN } from "@/lib/view/number";

type MovedColumn = Column<MovedLine>;

const UNIT = "€ a year";

function Change({ euros }: { readonly euros: number }) {
  return <Delta kind={moneyKind(euros)} text={signedEuros(euros)} />;
}

function stepColumns(total: MovedTotal): MovedColumn[] {
  return movedSteps.map(({ step, name }) => ({
    ...{ key: step, header: name, unit: UNIT, align: "end" },
    value: (line) => line.steps[step],
    cell: (line) => <Change euros={line.steps[step]} />,
    foot: <Change euros={total.steps[step]} />,
  }));
}

function endColumns(): MovedColumn[] {
  const ends = [
    {
      key: "before",
      header: "Loss before",
      none: ({ isNew }: MovedLine) => (isNew ? "not there" : NOT_KNOWN),
    },
    { key: "after", header: "Loss after", none: ({ isGone }: MovedLine) => (isGone ? "gone" : NOT_KNOWN) },
  ] as const;
  return ends.map(({ key, header, none }) => ({
    ...{ key, header, unit: `${UNIT}, with span`, align: "end", priority: 3 },
    value: (line) => line[key]?.mean ?? null,
    cell: (line) => (line[key] === null ? none(line) : moneySpan(line[key])),
  }));
}

function columnsOf(total: MovedTotal, lines: number): MovedColumn[] {
  return [
    {
      ...{ key: "line", header: "Line", filter: "text", width: "5rem", foot: `Sum of ${lines}` },
      value: (line) => line.code,
      cell: (line) => <span className="whitespace-nowrap">{line.code}</span>,
    },
    {
      ...{ key: "change", header: "Change", unit: UNIT, align: "end", priority: 1 },
      value: (line) => line.change,
      cell: (line) => <Change euros={line.change} />,
      foot: <Change euros={total.change} />,
    },
    ...stepColumns(total),
    ...endColumns(),
  ];
}

interface MovedTableProps {
  readonly lines: readonly MovedLine[];
  readonly total: MovedTotal;
}

/** Each line's change and the steps that make it; every row and column adds up as printed. */
export function MovedTable({ lines, total }: MovedTableProps) {
  const columns = useMemo(() => columnsOf(total, lines.length), [total, lines.length]);
  const rows = useMemo(
    () => [...lines].sort((a, b) => Math.abs(b.change) - Math.abs(a.change) || (a.code < b.code ? -1 : 1)),
    [lines],
  );
  return (
    <DataTable
      id="moved"
      caption="What moved the stop loss of each line"
      rows={rows}
      columns={columns}
      rowKey={(line) => line.lineId}
      rowHref={(line) => (line.isGone ? null : `/lines/${line.code}`)}
      noun="lines"
    />
  );
}
