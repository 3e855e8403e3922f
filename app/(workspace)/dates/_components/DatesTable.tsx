"use client";

import { useMemo } from "react";
import type { Column } from "@/app/_ui/DataTable/column";
import { DataTable } from "@/app/_ui/DataTable/DataTable";
import { StaleMark } from "@/app/_ui/StaleMark";
import { DutyMark } from "@/app/(workspace)/_components/DutyMark";
import type { IsoDate } from "@/lib/kernel/isoDate";
import { type DateAhead, dateKindName } from "@/lib/view/datesAhead";
import { plainNumber } from "@/lib/view/number";
import { day, distance } from "@/lib/view/time";

interface DatesTableProps {
  readonly dates: readonly DateAhead[];
  readonly asOf: IsoDate;
}

/** All dates in time order; each row leads to where the date is kept. */
export function DatesTable({ dates, asOf }: DatesTableProps) {
  const columns = useMemo(() => dateColumns(asOf), [asOf]);
  return (
    <DataTable
      id="dates"
      caption="Dates ahead, soonest first"
      noun="dates"
      rows={dates}
      columns={columns}
      rowKey={(date) => date.key}
      rowHref={(date) => date.href}
      initialSort={{ key: "day", descending: false }}
      empty={<p className="measure">Nothing is due here. Look further ahead, or at all sites.</p>}
    />
  );
}

function dateColumns(asOf: IsoDate): Column<DateAhead>[] {
  return [
    {
      ...{ key: "day", header: "Day", width: "7rem" },
      value: (date) => date.on,
      cell: (date) => (
        <span className="whitespace-nowrap">
          <time dateTime={date.on}>{day(date.on)}</time> {date.overdue ? <StaleMark text="Overdue" /> : null}
        </span>
      ),
    },
    {
      ...{ key: "when", header: "When", filter: "choice", width: "8rem" },
      value: (date) => date.on,
      word: (date) => (date.overdue ? "overdue" : "ahead"),
      cell: (date) => <When date={date} asOf={asOf} />,
    },
    {
      ...{ key: "kind", header: "Kind", filter: "choice", priority: 1, width: "8rem" },
      value: (date) => dateKindName(date.kind),
      cell: (date) => <Kind date={date} />,
    },
    {
      ...{ key: "of", header: "Of", filter: "text", priority: 1, width: "7.5rem" },
      value: (date) => date.of,
    },
    {
      ...{ key: "what", header: "What", filter: "text", width: "18rem" },
      value: (date) => date.what,
    },
    {
      ...{ key: "sites", header: "Sites", priority: 3 },
      value: (date) => date.sites.join(", "),
    },
    {
      ...{ key: "units", header: "Units", unit: "at these sites", align: "end", priority: 3 },
      value: (date) => date.units,
      cell: (date) => (date.units === null ? "–" : plainNumber(date.units)),
    },
  ];
}

function When({ date, asOf }: { readonly date: DateAhead; readonly asOf: IsoDate }) {
  const when = date.on === asOf ? "now" : distance(date.on, asOf);
  return date.overdue ? <strong>{when}</strong> : <span>{when}</span>;
}

function Kind({ date: { kind, what, on } }: { readonly date: DateAhead }) {
  if (kind !== "safety" && kind !== "legal") return <>{dateKindName(kind)}</>;
  return (
    <span className="inline-flex items-baseline gap-1.5">
      <DutyMark kind={kind} title={what} dueOn={on} />
      <strong>{dateKindName(kind)}</strong>
    </span>
  );
}
