"use client";
import { DataTable } from "@/app/_ui/DataTable/DataTable";
import type { Column } from "@/app/_ui/DataTable/column";
import { StageBadge } from "@/app/_ui/StageBadge";
import { SpanBar } from "@/app/_ui/SpanBar";
import { StackBar } from "@/app/_ui/StackBar";
import { EvidenceMark } from "@/app/_ui/EvidenceMark";
import { stageBadge, stageOrder, stageView } from "@/lib/view/stage";
import { evidenceMark } from "@/lib/view/evidence";
import { moneySpan, thousands } from "@/lib/view/format";
import { day } from "@/lib/view/time";
export interface R { code: string; name: string; site: string; stage: any; loss: any; base: number; short: number; date: string | null; ev: any; score: number }
const columns: Column<R>[] = [
  { key: "code", header: "Line", value: (r) => r.code, filter: "text" },
  { key: "name", header: "Name", value: (r) => r.name, filter: "text", priority: 2 },
  { key: "site", header: "Site", value: (r) => r.site, filter: "choice", priority: 3 },
  { key: "stage", header: "Worst stage", value: (r) => stageOrder(r.stage), word: (r) => stageView(r.stage).name, cell: (r) => <StageBadge {...stageBadge(r.stage)} />, filter: "choice", priority: 1 },
  { key: "loss", header: "Stop loss", unit: "k€ a year", align: "end", value: (r) => r.loss?.mean ?? null, cell: (r) => <>{thousands(r.loss?.mean ?? null)}</>, priority: 1, foot: "4 120" },
  { key: "span", header: "5 % to 95 %", unit: "k€ a year", value: (r) => r.loss?.high ?? null, cell: (r) => r.loss ? <SpanBar {...r.loss} max={1400000} text={moneySpan(r.loss)} assumed={r.ev === "assumed"} /> : "not known", width: "9rem" },
  { key: "made", header: "Base and shortage", value: (r) => r.short, cell: (r) => <StackBar max={900000} text={`base ${r.base}, shortage ${r.short}`} parts={[{ label: "base", value: r.base, look: "solid" }, { label: "shortage", value: r.short, look: "hatch" }]} />, width: "9rem", priority: 3 },
  { key: "out", header: "Shelf empty", unit: "4 in 5 chance", value: (r) => r.date, cell: (r) => day(r.date), priority: 2 },
  { key: "ev", header: "Evidence", value: (r) => r.ev, cell: (r) => <EvidenceMark {...evidenceMark(r.ev)} />, priority: 3 },
  { key: "score", header: "Score", align: "end", value: (r) => r.score, hidden: true },
];
export function ScratchTable({ rows, id }: { rows: R[]; id: string }) {
  return <DataTable id={id} caption="Lines by stop loss" noun="lines" rows={rows} columns={columns} rowKey={(r) => r.code} rowHref={(r) => `/lines/${r.code}`} initialSort={{ key: "loss", descending: true }} exportHref="/x" />;
}
