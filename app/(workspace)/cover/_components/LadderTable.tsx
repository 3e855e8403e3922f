"use client";

import { useMemo } from "react";
import type { Column } from "@/app/_ui/DataTable/column";
import { DataTable } from "@/app/_ui/DataTable/DataTable";
import { EmptyState } from "@/app/_ui/EmptyState";
import { SpanBar } from "@/app/_ui/SpanBar";
import { StageBadge } from "@/app/_ui/StageBadge";
import { percent } from "@/lib/view/chance";
import { type CoverRow, ROW_MONTHS } from "@/lib/view/coverLadder";
import { coverDayText, exitGapText } from "@/lib/view/coverWords";
import { exactMoney, money } from "@/lib/view/format";
import { itemClassName } from "@/lib/view/linePart";
import { NOT_KNOWN, plainNumber, quantity, significant } from "@/lib/view/number";
import { stageBadge, stageOrder, stageView } from "@/lib/view/stage";
import { day } from "@/lib/view/time";

function monthColumn(months: number, place: number): Column<CoverRow> {
  return {
    ...{
      key: `m${months}`,
      header: `In ${months} months`,
      unit: "no-spare chance",
      align: "end",
      priority: 3,
    },
    value: ({ noSpareAt }) => noSpareAt[place]?.mean ?? null,
    cell: ({ noSpareAt }) => {
      const span = noSpareAt[place];
      if (!span) return NOT_KNOWN;
      const text = `${percent(span.mean)} (${percent(span.low)} to ${percent(span.high)})`;
      return (
        <>
          {percent(span.mean)}
          <SpanBar {...span} max={1} text={text} />
        </>
      );
    },
  };
}

function Price({ ladder: { price } }: { readonly ladder: CoverRow }) {
  if (price === null) return <>{NOT_KNOWN}</>;
  return (
    <>
      <span className="whitespace-nowrap">{exactMoney(price.amount, price.currency)}</span>
      <span className="block text-ink-2 text-sm">
        {price.pricedOn === null ? "day not known" : day(price.pricedOn)}
      </span>
    </>
  );
}

const who: readonly Column<CoverRow>[] = [
  {
    ...{ key: "part", header: "Part", filter: "text", width: "8.5rem" },
    value: ({ number }) => number,
    word: ({ number }) => `${number} ${number.replace(/[^\p{L}\p{N}]/gu, "")}`,
    cell: ({ number }) => number,
  },
  {
    ...{ key: "family", header: "Family", filter: "choice", priority: 3, hidden: true },
    value: ({ family }) => family ?? "no family",
  },
  {
    ...{ key: "class", header: "Class", filter: "choice", priority: 3, hidden: true },
    value: ({ itemClass }) => itemClassName(itemClass),
  },
  {
    ...{ key: "stage", header: "Supply stage", filter: "choice" },
    value: ({ stage }) => stageOrder(stage),
    word: ({ stage }) => stageView(stage).name,
    cell: ({ stage }) => <StageBadge {...stageBadge(stage)} />,
  },
];

const worth: readonly Column<CoverRow>[] = [
  {
    ...{ key: "ratio", header: "Loss per price", unit: "a year", align: "end", priority: 1 },
    value: ({ lossPerPrice }) => lossPerPrice,
    cell: ({ lossPerPrice, priceEuro }) =>
      lossPerPrice === null
        ? priceEuro === null
          ? "no price"
          : "no cost per hour"
        : significant(lossPerPrice, 2),
  },
  {
    ...{ key: "loss", header: "For want of a spare", unit: "a year", align: "end", priority: 1 },
    value: ({ shortageLoss }) => shortageLoss,
    cell: ({ shortageLoss }) => money(shortageLoss),
  },
  {
    ...{ key: "price", header: "Price", unit: "one piece", align: "end" },
    value: ({ priceEuro }) => priceEuro,
    cell: (ladder) => <Price ladder={ladder} />,
  },
];

const USABLE: Column<CoverRow> = {
  ...{ key: "usable", header: "Usable", unit: "for units", align: "end", priority: 3 },
  value: ({ usable }) => usable,
  cell: ({ usable, installed, book }) =>
    book === null ? "not counted" : `${quantity(usable)} for ${plainNumber(installed)}`,
};

function daysColumns(asOf: string): readonly Column<CoverRow>[] {
  const text = (date: string | null, ladder: CoverRow) => coverDayText(date, { months: ladder.months, asOf });
  const shown = (date: string | null, ladder: CoverRow) => (
    <span className={date === null ? undefined : "whitespace-nowrap"}>{text(date, ladder)}</span>
  );
  const span = (ladder: CoverRow) => {
    const [early, late] = [text(ladder.days.p80Early, ladder), text(ladder.days.p80Late, ladder)];
    return early === late ? null : <span className="block text-ink-2 text-sm">{`${early} to ${late}`}</span>;
  };
  return [
    {
      ...{ key: "p50", header: "Empty", unit: "P50", priority: 3 },
      value: ({ days }) => days.p50,
      cell: (ladder) => shown(ladder.days.p50, ladder),
    },
    {
      ...{ key: "p80", header: "Empty", unit: "P80, span of the rate", width: "9rem" },
      value: ({ days }) => days.p80,
      cell: (ladder) => (
        <>
          {shown(ladder.days.p80, ladder)}
          {span(ladder)}
        </>
      ),
    },
    {
      ...{ key: "p95", header: "Empty", unit: "P95", priority: 3 },
      value: ({ days }) => days.p95,
      cell: (ladder) => shown(ladder.days.p95, ladder),
    },
    {
      ...{ key: "gap", header: "Exit gap", unit: "months", priority: 3, width: "9rem" },
      value: ({ exit }) => (exit.kind === "all" ? exit.months : null),
      cell: ({ exit }) => exitGapText(exit),
    },
  ];
}

const months = ROW_MONTHS.map(monthColumn);

interface LadderTableProps {
  readonly ladders: readonly CoverRow[];
  readonly asOf: string;
  readonly showsAmounts: boolean;
}

/** Every installed part with how long its spares last. */
export function LadderTable({ ladders, asOf, showsAmounts }: LadderTableProps) {
  const columns = useMemo(
    () => [...who, ...(showsAmounts ? worth : []), USABLE, ...daysColumns(asOf), ...months],
    [asOf, showsAmounts],
  );
  return (
    <DataTable
      id="cover"
      caption={`Cover of each part, ${showsAmounts ? "cheap blockers" : "what is empty soonest"} first`}
      noun="parts"
      rows={ladders}
      columns={columns}
      rowKey={({ partId }) => partId}
      rowHref={({ partId }) => `/parts/${partId}#ladder`}
      empty={
        <EmptyState title="No parts installed yet">
          A part stands here once a unit of it is installed. Import an axis register.
        </EmptyState>
      }
    />
  );
}
