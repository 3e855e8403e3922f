"use client";

import type { ReactNode } from "react";
import { AsOfLink } from "@/app/_ui/AsOfLink";
import type { Column } from "@/app/_ui/DataTable/column";
import { DataTable } from "@/app/_ui/DataTable/DataTable";
import type { LineEvent } from "@/lib/view/lineDossier";
import { NOT_KNOWN, significant } from "@/lib/view/number";
import { eventKindName } from "@/lib/view/partEvent";
import { day } from "@/lib/view/time";

/** What does not count stands back in grey, with the reason in a column of its own. */
function quiet(event: LineEvent, shown: ReactNode): ReactNode {
  return event.setAside === null ? shown : <span className="text-ink-3">{shown}</span>;
}

const hoursOf = (value: number | null) => (value === null ? NOT_KNOWN : significant(value, 3));
const spareOf = ({ spareAtHand }: LineEvent) =>
  spareAtHand === null ? NOT_KNOWN : spareAtHand ? "yes" : "no";

const COLUMNS: Column<LineEvent>[] = [
  {
    ...{ key: "when", header: "When, at the site", width: "9rem" },
    value: (event) => `${event.day} ${event.time}`,
    cell: (event) => quiet(event, `${day(event.day)}, ${event.time}`),
  },
  {
    ...{ key: "kind", header: "Event", filter: "choice", priority: 1 },
    value: (event) => eventKindName(event.kind),
    cell: (event) => quiet(event, eventKindName(event.kind)),
  },
  {
    ...{ key: "place", header: "Machine and place", filter: "text" },
    value: (event) => event.machine,
    word: (event) => `${event.machine ?? ""} ${event.place ?? ""}`,
    cell: (event) => quiet(event, [event.machine, event.place].filter(Boolean).join(" ") || NOT_KNOWN),
  },
  {
    ...{ key: "part", header: "Part", filter: "text" },
    value: (event) => event.part?.number ?? null,
    cell: (event) =>
      event.part === null
        ? quiet(event, "names no part")
        : quiet(event, <AsOfLink href={`/parts/${event.part.id}`}>{event.part.number}</AsOfLink>),
  },
  {
    ...{ key: "stop", header: "Stop", unit: "h", align: "end" },
    value: (event) => event.downtimeHours,
    cell: (event) => quiet(event, hoursOf(event.downtimeHours)),
  },
  {
    ...{ key: "wait", header: "Of it waiting", unit: "h", align: "end", priority: 3 },
    value: (event) => event.logisticHours,
    cell: (event) => quiet(event, hoursOf(event.logisticHours)),
  },
  {
    ...{ key: "spare", header: "Spare at hand", priority: 3 },
    value: spareOf,
    cell: (event) => quiet(event, spareOf(event)),
  },
  {
    ...{ key: "source", header: "Source and number", filter: "text" },
    value: (event) => `${event.source} ${event.reference}`,
    cell: (event) => quiet(event, `${event.source} ${event.reference}`),
  },
  {
    ...{ key: "text", header: "Text", filter: "text", priority: 3, width: "12rem" },
    value: (event) => event.text,
    cell: (event) => quiet(event, event.text ?? ""),
  },
  {
    ...{ key: "counts", header: "Counts?", filter: "choice", width: "10rem" },
    value: (event) => (event.setAside === null ? "counts" : "set aside"),
    cell: (event) => quiet(event, countsWords(event)),
  },
];

function countsWords({ setAside, commonCause }: LineEvent): string {
  if (setAside !== null) return `set aside: ${setAside}`;
  return commonCause === null ? "counts" : `counts once with all of ${commonCause}`;
}

/** The history of a line; what does not count stays in sight. */
export function EventsTable({
  code,
  events,
}: {
  readonly code: string;
  readonly events: readonly LineEvent[];
}) {
  return (
    <DataTable
      id="events"
      caption={`Events of ${code} in the last five years`}
      rows={events}
      columns={COLUMNS}
      rowKey={(event) => event.id}
      initialSort={{ key: "when", descending: true }}
      noun="events"
      empty={
        <p>
          No event is recorded here in the last five years. That is not a rate of zero: the class stands in.
        </p>
      }
    />
  );
}
