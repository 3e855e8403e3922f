"use client";

import type { Column } from "@/app/_ui/DataTable/column";
import { DataTable } from "@/app/_ui/DataTable/DataTable";
import type { FieldChange } from "@/lib/view/importChanges";
import type { Paged } from "@/lib/view/importView";
import { plainNumber } from "@/lib/view/number";
import { NextPage } from "./NextPage";

const COLUMNS: readonly Column<FieldChange>[] = [
  { key: "row", header: "Row", align: "end", value: (one) => one.rowNumber, priority: 1 },
  { key: "kind", header: "Kind", value: (one) => one.thing, filter: "choice", priority: 3 },
  { key: "name", header: "Thing", value: (one) => one.name, filter: "text", priority: 1 },
  { key: "field", header: "Field", value: (one) => one.field, filter: "choice", priority: 1 },
  { key: "before", header: "Before", value: (one) => one.before, filter: "text", priority: 1 },
  {
    key: "after",
    header: "After",
    value: (one) => one.after,
    cell: (one) => <strong className="font-semibold">{one.after}</strong>,
    filter: "text",
    priority: 1,
  },
];

interface Props {
  readonly changes: Paged<FieldChange>;
}

/** Each field that is other than before, with both values. */
export function ChangeTable({ changes: { shown, count, next } }: Props) {
  return (
    <>
      {count > shown.length ? (
        <p className="mb-2 text-ink-2">
          {plainNumber(shown.length)} of {plainNumber(count)} changes are listed.
        </p>
      ) : null}
      <DataTable
        id="changes"
        caption="Changes, from before to after"
        rows={shown}
        columns={COLUMNS}
        rowKey={(one) => `${one.rowNumber} ${one.thing} ${one.name} ${one.field}`}
        noun="changes"
      />
      <NextPage list="changes" next={next}>
        Next changes
      </NextPage>
    </>
  );
}
