"use client";

import type { ReactNode } from "react";
import { AsOfLink } from "@/app/_ui/AsOfLink";
import type { Column } from "@/app/_ui/DataTable/column";
import { DataTable } from "@/app/_ui/DataTable/DataTable";
import type { ListedEvent } from "@/lib/view/eventPair";
import { NOT_KNOWN, significant } from "@/lib/view/number";
import { eventKindName } from "@/lib/view/partEvent";
import { day } from "@/lib/view/time";

/** What does not count stands back in grey. */
function quiet({ setAside }: ListedEvent, shown: ReactNode): ReactNode {
  return setAside === null ? shown : <span className="text-ink-3">{shown}</span>;
}

const COLUMNS: Column<ListedEvent>[] = [
  {
    ...{ key: "when", header: "When, at the site", width: "9rem" },
    value: (event) => `${event.day} ${event.time}`,
    cell: (event) => quiet(event, `${day(event.day)}, ${event.time}`),
  },
  { ...{ key: "site", header: "Site", filter: "choice" }, value: ({ siteCode }) => siteCode },
  {
    ...{ key: "line", header: "Line", filter: "choice", width: "5.5rem" },
    value: ({ lineCode }) => lineCode,
    cell: (event) =>
      event.lineCode === null ? (
        NOT_KNOWN
      ) : (
        <AsOfLink href={`/lines/${event.lineCode}`}>{event.lineCode}</AsOfLink>
      ),
  },
  {
    ...{ key: "kind", header: "Event", filter: "choice", priority: 1 },
    value: ({ kind }) => eventKindName(kind),
    cell: (event) => quiet(event, eventKindName(event.kind)),
  },
  {
    ...{ key: "place", header: "Machine and place", filter: "text" },
    value: ({ machine }) => machine,
    word: ({ machine, place }) => `${machine ?? ""} ${place ?? ""}`,
    cell: (event) => quiet(event, [event.machine, event.place].filter(Boolean).join(" ") || NOT_KNOWN),
  },
  {
    ...{ key: "part", header: "Part", filter: "text", width: "8rem" },
    value: ({ part }) => part?.number ?? null,
    cell: (event) =>
      event.part === null
        ? quiet(event, "names no part")
        : quiet(event, <AsOfLink href={`/parts/${event.part.id}`}>{event.part.number}</AsOfLink>),
  },
  {
    ...{ key: "stop", header: "Stop", unit: "h", align: "end" },
    value: ({ downtimeHours }) => downtimeHours,
    cell: (event) =>
      quiet(event, event.downtimeHours === null ? NOT_KNOWN : significant(event.downtimeHours, 3)),
  },
  { ...{ key: "source", header: "Source", filter: "choice", width: "7rem" }, value: ({ source }) => source },
  {
    ...{ key: "number", header: "Number", filter: "text", width: "7rem" },
    value: ({ reference }) => reference,
  },
  {
    ...{ key: "counts", header: "Counts?", filter: "choice", width: "7rem" },
    value: ({ setAside }) => (setAside === null ? "counts" : "set aside"),
    cell: (event) => quiet(event, event.setAside === null ? "counts" : `set aside: ${event.setAside}`),
  },
];

/** Every record, whether it counts or not. */
export function AllEvents({ events }: { readonly events: readonly ListedEvent[] }) {
  return (
    <DataTable
      id="events"
      caption="Records of events"
      noun="records"
      rows={events}
      columns={COLUMNS}
      rowKey={({ id }) => id}
      initialSort={{ key: "when", descending: true }}
      empty={<p>No event is recorded in these days. That is not a rate of zero.</p>}
    />
  );
}
