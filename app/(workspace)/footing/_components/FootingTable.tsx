"use client";

import type { Column } from "@/app/_ui/DataTable/column";
import { DataTable } from "@/app/_ui/DataTable/DataTable";
import { Delta } from "@/app/_ui/Delta";
import { EmptyState } from "@/app/_ui/EmptyState";
import { percent } from "@/lib/view/chance";
import { type FootingRow, shareOf, trendWords } from "@/lib/view/footing";
import { money } from "@/lib/view/format";
import { GAP_KINDS, gapNoun } from "@/lib/view/gap";
import { plainNumber } from "@/lib/view/number";
import { day } from "@/lib/view/time";

const WHAT: readonly Column<FootingRow>[] = [
  {
    ...{ key: "what", header: "Gap", filter: "text", width: "16rem" },
    value: ({ title }) => title,
    cell: ({ title, why }) => (
      <>
        {title}
        <span className="block font-normal text-ink-2 text-xs">{why}</span>
      </>
    ),
  },
  { key: "kind", header: "Kind", filter: "choice", value: ({ kind }) => GAP_KINDS[kind] },
  {
    ...{ key: "missing", header: "Records", align: "end", priority: 1 },
    value: ({ missing }) => missing,
    cell: ({ missing, of, subject }) => (
      <>
        {plainNumber(missing)}
        <span className="block text-ink-2 text-xs">
          of {plainNumber(of)} {gapNoun(subject)[1]}, {percent(shareOf({ missing, of }))}
        </span>
      </>
    ),
  },
  {
    ...{ key: "share", header: "Share", align: "end", hidden: true },
    value: shareOf,
    cell: (row) => percent(shareOf(row)),
  },
  {
    ...{ key: "since", header: "Back to", priority: 3, width: "6.5rem" },
    value: ({ oldestOn }) => oldestOn,
    cell: ({ oldestOn }) => (oldestOn === null ? "no day" : day(oldestOn)),
  },
];

const LOSS: readonly Column<FootingRow>[] = [
  {
    ...{ key: "rests", header: "Loss that rests on it", unit: "a year", align: "end", priority: 1 },
    value: ({ effect }) => effect?.rests ?? null,
    cell: ({ effect, missing }) =>
      effect === null || missing === 0 ? (
        <span className="text-ink-2">{missing === 0 ? "none" : "not known"}</span>
      ) : (
        <>
          {money(effect.rests)}
          {effect.share === null ? null : (
            <span className="block text-ink-2 text-xs">{percent(effect.share)} of the loss</span>
          )}
        </>
      ),
  },
  {
    ...{ key: "unknown", header: "Of it from not knowing", unit: "a year, at most", align: "end" },
    value: ({ effect }) => effect?.unknown ?? null,
    cell: ({ effect }) =>
      effect === null || effect.unknown === null ? (
        <span className="text-ink-2">not known</span>
      ) : (
        money(effect.unknown)
      ),
  },
];

const WORK: readonly Column<FootingRow>[] = [
  {
    ...{ key: "trend", header: "Since the snapshot", priority: 3, width: "7rem" },
    value: ({ missing, before }) => (before === null ? null : missing - before.missing),
    cell: (row) => {
      const trend = trendWords(row);
      if (trend === null || row.before === null) return <span className="text-ink-2">no earlier count</span>;
      return (
        <>
          <Delta {...trend} />
          <span className="block text-ink-2 text-xs">{day(row.before.asOf)}</span>
        </>
      );
    },
  },
  {
    ...{ key: "hours", header: "Hours to mend", align: "end", priority: 3 },
    value: ({ missing, hoursEach }) => missing * hoursEach,
    cell: ({ missing, hoursEach }) => (
      <>
        {plainNumber(missing * hoursEach, 1)}
        <span className="block text-ink-2 text-xs">{plainNumber(hoursEach, 2)} each</span>
      </>
    ),
  },
];

const COLUMNS = [...WHAT, ...LOSS, ...WORK];
const PLAIN = [...WHAT, ...WORK];

interface FootingTableProps {
  readonly rows: readonly FootingRow[];
  readonly siteCode: string | null;
  readonly showsAmounts: boolean;
}

/** The gaps that are there; a row opens the records to mend. */
export function FootingTable({ rows, siteCode, showsAmounts }: FootingTableProps) {
  const query = siteCode === null ? "" : `?site=${encodeURIComponent(siteCode)}`;
  return (
    <DataTable
      id="gaps"
      caption="Gaps in the records"
      noun="gaps"
      rows={rows}
      columns={showsAmounts ? COLUMNS : PLAIN}
      rowKey={({ key }) => key}
      rowHref={({ key }) => `/footing/${key}${query}`}
      empty={
        <EmptyState title="Nothing is missing">
          None of the gaps that are looked for stands in these records. What was never recorded at all, such
          as a machine nobody named, cannot be found this way: walk the line, or load a network list.
        </EmptyState>
      }
    />
  );
}
