"use client";

import type { Column } from "@/app/_ui/DataTable/column";
import { DataTable } from "@/app/_ui/DataTable/DataTable";
import { VerdictMark } from "@/app/(workspace)/_components/VerdictMark";
import type { StandingRow } from "@/lib/view/standing";

const revisionWord = ({ revisionBlocked, revisionUnknown }: StandingRow): string => {
  if (revisionBlocked === null) return "not concerned";
  if (revisionBlocked > 0) return "blocked";
  return revisionUnknown > 0 ? "unknown" : "clear";
};

const columns: readonly Column<StandingRow>[] = [
  { key: "line", header: "Line", value: ({ code }) => code, filter: "text", width: "6rem" },
  { key: "name", header: "Name", value: ({ name }) => name, filter: "text", priority: 3 },
  { key: "site", header: "Site", value: ({ siteCode }) => siteCode, filter: "choice", priority: 3 },
  { key: "standing", header: "Stands", value: ({ standing }) => standing, filter: "choice", priority: 1 },
  {
    ...{ key: "model", header: "Leading controller", filter: "choice" },
    value: ({ model }) => model,
    cell: ({ model, lead }) =>
      model === null ? (
        "not known"
      ) : (
        <span className="whitespace-nowrap">
          {model} <span className="block text-ink-2 text-sm">{lead}</span>
        </span>
      ),
  },
  { key: "level", header: "Level", align: "end", value: ({ level }) => level },
  {
    ...{ key: "memory", header: "Memory after the raise", filter: "choice" },
    value: ({ memory }) => memory ?? "no raise",
    cell: ({ memory, memorySum }) =>
      memory === null ? (
        <span className="text-ink-2">no raise</span>
      ) : (
        <span>
          <VerdictMark state={memory} /> <span className="block text-ink-2 text-sm">{memorySum}</span>
        </span>
      ),
  },
  {
    ...{ key: "worse", header: "Controllers that stand worse", align: "end", priority: 3 },
    value: ({ worse }) => worse,
    cell: ({ worse, unread, controllers }) =>
      `${worse} of ${controllers}${unread === 0 ? "" : `, ${unread} not read`}`,
  },
  {
    ...{ key: "revision", header: "Newest spares", filter: "choice" },
    value: revisionWord,
    cell: (row) => {
      const word = revisionWord(row);
      return word === "not concerned" ? (
        <span className="text-ink-2">{word}</span>
      ) : (
        <VerdictMark state={word as "blocked" | "unknown" | "clear"} />
      );
    },
  },
];

/** Every line with where it stands. */
export function StandingTable({ rows }: { readonly rows: readonly StandingRow[] }) {
  return (
    <DataTable
      id="standing"
      caption="Lines and where they stand"
      rows={rows}
      columns={columns}
      rowKey={({ code }) => code}
      rowHref={({ code }) => `/lines/${code}#blockers`}
      noun="lines"
      empty="No line is recorded yet. Import an asset register."
    />
  );
}
