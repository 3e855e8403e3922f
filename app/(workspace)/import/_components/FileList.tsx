"use client";

import type { Column } from "@/app/_ui/DataTable/column";
import { DataTable } from "@/app/_ui/DataTable/DataTable";
import { EmptyState } from "@/app/_ui/EmptyState";
import { TakeBack } from "@/app/(workspace)/import/_components/TakeBack";
import type { ImportHead } from "@/lib/view/importView";
import { stateWord } from "@/lib/view/importWords";
import { moment } from "@/lib/view/time";

/** Counts say nothing until a file was loaded. */
const countOf = (key: keyof ImportHead["counts"]) => (file: ImportHead) =>
  file.state === "staged" ? null : file.counts[key];

const shown = (key: keyof ImportHead["counts"]) => (file: ImportHead) =>
  file.state === "staged" ? "" : file.counts[key];

const COLUMNS: readonly Column<ImportHead>[] = [
  { key: "file", header: "File", value: (file) => file.fileName, filter: "text", priority: 1 },
  { key: "register", header: "Register", value: (file) => file.registerLabel, filter: "choice", priority: 1 },
  { key: "state", header: "State", value: (file) => stateWord(file.state), filter: "choice", priority: 1 },
  { key: "by", header: "Handed in by", value: (file) => file.by, filter: "text", priority: 3 },
  {
    key: "at",
    header: "Handed in",
    unit: "UTC",
    value: (file) => file.createdAt,
    cell: (file) => moment(file.createdAt, "UTC"),
    priority: 2,
  },
  { key: "added", header: "Added", align: "end", value: countOf("added"), cell: shown("added") },
  { key: "changed", header: "Changed", align: "end", value: countOf("changed"), cell: shown("changed") },
  {
    key: "unchanged",
    header: "Unchanged",
    align: "end",
    value: countOf("unchanged"),
    cell: shown("unchanged"),
  },
  {
    key: "refused",
    header: "Refused",
    unit: "rows",
    align: "end",
    value: countOf("refused"),
    cell: shown("refused"),
  },
  {
    key: "back",
    header: "Take back",
    value: (file) => file.state === "committed",
    cell: (file) =>
      file.state === "committed" ? <TakeBack batchId={file.id} fileName={file.fileName} /> : null,
    priority: 2,
  },
];

/** The files handed in, newest first. */
export function FileList({ files }: { readonly files: readonly ImportHead[] }) {
  return (
    <DataTable
      id="files"
      caption="Files handed in, newest first"
      rows={files}
      columns={COLUMNS}
      rowKey={(file) => file.id}
      rowHref={(file) => `/import/${file.id}`}
      initialSort={{ key: "at", descending: true }}
      noun="files"
      empty={
        <EmptyState title="No file yet">
          The first file you hand in stands here, with what it added and changed, and can be taken back from
          here.
        </EmptyState>
      }
    />
  );
}
