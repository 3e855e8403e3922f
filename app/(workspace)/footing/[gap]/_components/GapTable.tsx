"use client";

import type { Column } from "@/app/_ui/DataTable/column";
import { DataTable } from "@/app/_ui/DataTable/DataTable";
import { EmptyState } from "@/app/_ui/EmptyState";
import { type Gap, gapNoun } from "@/lib/view/gap";
import { type GapRow, mendHref } from "@/lib/view/gapRow";
import { day } from "@/lib/view/time";

const COLUMNS: readonly Column<GapRow>[] = [
  { key: "label", header: "Record", filter: "text", value: ({ label }) => label },
  { key: "site", header: "Site", filter: "choice", priority: 1, value: ({ siteCode }) => siteCode },
  { key: "detail", header: "What it is", filter: "text", priority: 1, value: ({ detail }) => detail },
  {
    ...{ key: "since", header: "Back to" },
    value: ({ sinceOn }) => sinceOn,
    cell: ({ sinceOn }) => (sinceOn === null ? "no day on record" : day(sinceOn)),
  },
];

interface GapTableProps {
  readonly gap: Pick<Gap, "key" | "subject" | "title">;
  readonly rows: readonly GapRow[];
}

/** The records to mend; a row opens the page it is mended on. */
export function GapTable({ gap, rows }: GapTableProps) {
  return (
    <DataTable
      id="records"
      caption={gap.title}
      noun={gapNoun(gap.subject)[1]}
      rows={rows}
      columns={COLUMNS}
      rowKey={({ id }) => id}
      rowHref={(row) => mendHref(gap.subject, gap.key, row)}
      empty={
        <EmptyState title="Nothing is missing">
          No record here has this gap on the day the page looks at.
        </EmptyState>
      }
    />
  );
}
