"use client";

import { AsOfLink } from "@/app/_ui/AsOfLink";
import type { Column } from "@/app/_ui/DataTable/column";
import { DataTable } from "@/app/_ui/DataTable/DataTable";
import { daysLeftWords, type NoticeRow, noticeStateName } from "@/lib/view/noticeList";
import { NOT_KNOWN, plainNumber } from "@/lib/view/number";
import { day } from "@/lib/view/time";

const COLUMNS: Column<NoticeRow>[] = [
  {
    ...{ key: "document", header: "Document", filter: "text", width: "13rem" },
    value: ({ document }) => document,
  },
  { ...{ key: "maker", header: "Maker", filter: "choice" }, value: ({ maker }) => maker || NOT_KNOWN },
  {
    ...{ key: "state", header: "State", filter: "choice", priority: 1 },
    value: ({ state }) => noticeStateName(state),
  },
  {
    ...{ key: "left", header: "To start the order", priority: 1 },
    value: ({ state, daysLeft }) => (state === "open" ? daysLeft : null),
    word: ({ daysLeft }) => daysLeftWords(daysLeft),
    cell: ({ state, daysLeft }) =>
      state === "open" ? <strong className="whitespace-nowrap">{daysLeftWords(daysLeft)}</strong> : "",
  },
  {
    ...{ key: "order-by", header: "Start the order by" },
    value: ({ orderByOn }) => orderByOn,
    cell: ({ orderByOn }) => day(orderByOn),
  },
  {
    ...{ key: "last-order", header: "Last order" },
    value: ({ lastOrderOn }) => lastOrderOn,
    cell: ({ lastOrderOn }) => day(lastOrderOn),
  },
  {
    ...{ key: "parts", header: "Parts", filter: "text", priority: 3 },
    value: ({ parts }) => parts.length,
    word: ({ parts }) => parts.map(({ number }) => number).join(" "),
    cell: ({ parts }) => parts.map(({ number }) => number).join(", "),
  },
  {
    ...{ key: "units", header: "In service", align: "end" },
    value: ({ units }) => units,
    cell: ({ units }) => plainNumber(units),
  },
  {
    ...{ key: "decide", header: "How many to buy" },
    value: ({ families }) => families.map(({ name }) => name).join(", "),
    cell: ({ families, state }) =>
      state === "taken-back"
        ? ""
        : families.map(({ id, name, decisionId }) => (
            <AsOfLink
              key={id}
              className="mr-3 whitespace-nowrap"
              href={decisionId === null ? `/last-buy/${id}` : `/last-buy/decisions/${decisionId}`}
            >
              {decisionId === null ? `${name}: work it out` : `${name}: the decision`}
            </AsOfLink>
          )),
  },
];

/** Notices, the most urgent first. */
export function NoticeTable({ rows }: { readonly rows: readonly NoticeRow[] }) {
  return (
    <DataTable
      id="notices"
      caption="Discontinuance notices"
      noun="notices"
      rows={rows}
      columns={COLUMNS}
      rowKey={({ id }) => id}
      rowHref={({ id }) => `/notices/${id}`}
    />
  );
}
