"use client";

import type { Column } from "@/app/_ui/DataTable/column";
import { DataTable } from "@/app/_ui/DataTable/DataTable";
import { percent } from "@/lib/view/chance";
import { exactMoney } from "@/lib/view/format";
import { count, NOT_KNOWN } from "@/lib/view/number";
import { projectStatusWords } from "@/lib/view/project";
import { type ListedProject, lateWords, overrunWords } from "@/lib/view/projectList";
import { index, localMoney, localRange } from "@/lib/view/projectMoney";
import { day } from "@/lib/view/time";

/** Amounts of many currencies sort by what they are in euros at the budget rate. */
const euros = (amount: number | string | null, { perEuro }: ListedProject) =>
  amount === null || perEuro === null ? null : Number(amount) / perEuro;

const COLUMNS: readonly Column<ListedProject>[] = [
  { key: "code", header: "Project", filter: "text", priority: 1, width: "7rem", value: ({ code }) => code },
  {
    ...{ key: "name", header: "What", filter: "text", priority: 1, width: "14rem" },
    value: ({ name }) => name,
    cell: ({ name, cause }) => (
      <>
        {name}
        {cause ? <span className="block text-ink-2 text-sm">{cause}</span> : null}
      </>
    ),
  },
  { key: "site", header: "Site", filter: "choice", priority: 2, value: ({ siteCode }) => siteCode },
  {
    ...{ key: "state", header: "State", filter: "choice", priority: 2 },
    value: ({ status }) => projectStatusWords(status),
  },
  {
    ...{ key: "budget", header: "Budget", align: "end", priority: 2 },
    value: (row) => euros(row.budget, row),
    cell: ({ budget, currency }) => localMoney(Number(budget), currency),
  },
  {
    ...{ key: "paid", header: "Paid", align: "end", priority: 3, hidden: true },
    value: (row) => euros(row.paid, row),
    cell: ({ paid, currency }) => exactMoney(paid, currency),
  },
  {
    ...{ key: "open", header: "Ordered, not yet paid", align: "end", priority: 3, hidden: true },
    value: (row) => euros(row.open, row),
    cell: ({ open, currency }) => exactMoney(open, currency),
  },
  {
    ...{ key: "earned", header: "Planned / earned", align: "end", priority: 3 },
    value: ({ earnedShare }) => earnedShare,
    cell: ({ plannedShare, earnedShare }) => `${percent(plannedShare)} / ${percent(earnedShare)}`,
  },
  {
    ...{ key: "cpi", header: "Cost index", align: "end", priority: 1 },
    value: ({ cpi }) => cpi,
    cell: ({ cpi }) => index(cpi),
  },
  {
    ...{ key: "spi", header: "Schedule index", align: "end", priority: 1 },
    value: ({ spi }) => spi,
    cell: ({ spi }) => index(spi),
  },
  {
    ...{ key: "end", header: "Cost at the end", align: "end", priority: 2 },
    value: (row) => euros(row.trend, row),
    cell: ({ trend, eacSpan, currency }) => (
      <>
        {localMoney(trend, currency)}
        <span className="block text-ink-2 text-sm">{localRange(eacSpan, currency)}</span>
      </>
    ),
  },
  {
    ...{ key: "forecast", header: "Lead’s forecast", align: "end", priority: 3, hidden: true },
    value: (row) => euros(row.forecast, row),
    cell: ({ forecast, currency }) => (forecast === null ? NOT_KNOWN : exactMoney(forecast, currency)),
  },
  {
    ...{ key: "overrun", header: "Overrun", filter: "choice", priority: 2 },
    value: ({ overrun }) => overrunWords(overrun),
  },
  {
    ...{ key: "late", header: "Late", filter: "choice", priority: 2 },
    value: ({ overdue }) => overdue,
    word: ({ overdue }) => lateWords(overdue),
    cell: ({ overdue }) => (overdue === 0 ? "–" : count(overdue, "milestone")),
  },
  {
    ...{ key: "gate", header: "Next gate", priority: 3 },
    value: ({ gateOn }) => gateOn,
    cell: ({ gate, gateOn, gateOpen }) =>
      gate === null ? (
        "–"
      ) : (
        <>
          {gate}
          <span className="block text-ink-2 text-sm">
            {[
              gateOn === null ? "" : day(gateOn),
              gateOpen ? `${count(gateOpen, "item")} open` : "nothing open",
            ]
              .filter((text) => text !== "")
              .join(", ")}
          </span>
        </>
      ),
  },
];

const AMOUNTS: readonly string[] = ["budget", "paid", "open", "end", "forecast"];
const PLAIN = COLUMNS.filter(({ key }) => !AMOUNTS.includes(key));

interface ProjectTableProps {
  readonly rows: readonly ListedProject[];
  /** Whether the columns of money are there. */
  readonly amounts: boolean;
}

/** The projects with their budgets, ledgers, progress, forecasts and next gates. */
export function ProjectTable({ rows, amounts }: ProjectTableProps) {
  return (
    <DataTable
      id="projects"
      caption="Projects"
      noun="projects"
      rows={rows}
      columns={amounts ? COLUMNS : PLAIN}
      rowKey={({ id }) => id}
      rowHref={({ code }) => `/projects/${encodeURIComponent(code)}`}
      initialSort={{ key: "cpi", descending: false }}
    />
  );
}
