"use client";

import { usePathname, useRouter, useSearchParams } from "next/navigation";
import { type FormEvent, type ReactNode, useOptimistic, useState } from "react";
import { Button } from "@/app/_ui/Button";
import type { Column } from "@/app/_ui/DataTable/column";
import { DataTable } from "@/app/_ui/DataTable/DataTable";
import { FormMessage } from "@/app/_ui/FormMessage";
import { TextField } from "@/app/_ui/field/TextField";
import type { PreviewRow } from "@/lib/view/importPreview";
import { readRowList, writeRowList } from "@/lib/view/importRows";
import { plainNumber } from "@/lib/view/number";
import { useStagedState } from "./StagedState";

interface Props {
  readonly labels: readonly string[];
  readonly rows: readonly PreviewRow[];
  readonly leftOut: readonly number[];
  readonly rowCount: number;
}

const EFFECTS = { ok: "fine", warning: "please look", error: "stays out" } as const;

function columnsOf(labels: readonly string[], tick: (row: PreviewRow) => ReactNode): Column<PreviewRow>[] {
  return [
    { key: "row", header: "Row", align: "end", value: (row) => row.rowNumber, priority: 1 },
    { key: "out", header: "Leave out", value: (row) => row.rowNumber, cell: tick, priority: 1 },
    { key: "state", header: "State", value: (row) => EFFECTS[row.state], filter: "choice", priority: 1 },
    ...labels.map(
      (label, index): Column<PreviewRow> => ({
        key: `c${index}`,
        header: label,
        value: (row) => row.cells[index]?.text ?? "",
        cell: (row) => {
          const cell = row.cells[index];
          return cell?.inferred ? <span className="assumed">{cell.text}</span> : (cell?.text ?? "");
        },
        filter: "text",
        priority: index < 6 ? 2 : 3,
      }),
    ),
  ];
}

/** The first rows as read; each can be left out, and any others by their numbers. The choice is in the address. */
export function RowTable({ labels, rows, leftOut, rowCount }: Props) {
  const router = useRouter();
  const path = usePathname();
  const params = useSearchParams();
  const { isUnread, isCounting, startCounting } = useStagedState();
  const [ticked, setTicked] = useOptimistic(leftOut);
  const [refused, setRefused] = useState("");
  const without = writeRowList(leftOut);

  const leave = (next: readonly number[]) => {
    const address = new URLSearchParams(params);
    if (next.length > 0) address.set("without", writeRowList(next));
    else address.delete("without");
    startCounting(() => {
      setTicked(next);
      router.replace(`${path}?${address}`, { scroll: false });
    });
  };
  const out = new Set(ticked);
  const toggle = (row: number) =>
    leave(out.has(row) ? ticked.filter((one) => one !== row) : [...ticked, row]);
  const columns = columnsOf(labels, ({ rowNumber, state }) => (
    <input
      type="checkbox"
      className="tick"
      aria-label={`Leave out row ${rowNumber}`}
      checked={state === "error" || out.has(rowNumber)}
      disabled={state === "error" || isCounting || isUnread}
      onChange={() => toggle(rowNumber)}
    />
  ));

  const enter = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const text = new FormData(event.currentTarget).get("without");
    const list = readRowList(typeof text === "string" ? text : "");
    setRefused(list === null ? "Write row numbers and ranges, such as 12, 40-60." : "");
    if (list !== null) leave(list);
  };
  return (
    <>
      <form onSubmit={enter} className="mb-4 flex flex-wrap items-end gap-3">
        <TextField
          key={without}
          label="Rows to leave out"
          name="without"
          hint="Row numbers and ranges, such as 12, 40-60."
          defaultValue={without}
          error={refused || undefined}
        />
        <Button type="submit" disabled={isCounting}>
          Leave these out
        </Button>
      </form>
      <FormMessage kind="done">{isCounting ? "Counting again…" : ""}</FormMessage>
      {rowCount > rows.length ? (
        <p className="mb-2 text-ink-2">
          The first {plainNumber(rows.length)} of {plainNumber(rowCount)} rows are listed; all are read.
        </p>
      ) : null}
      <p className="mb-2 text-ink-2 text-sm">A dotted outline marks a value that says more than its cell.</p>
      <DataTable
        id="rows"
        caption="Rows as read"
        rows={rows}
        columns={columns}
        rowKey={(row) => String(row.rowNumber)}
        noun="rows"
      />
    </>
  );
}
