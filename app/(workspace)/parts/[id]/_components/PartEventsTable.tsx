"use client";

import type { ReactNode } from "react";
import type { Column } from "@/app/_ui/DataTable/column";
import { DataTable } from "@/app/_ui/DataTable/DataTable";
import { WhereFrom } from "@/app/_ui/WhereFrom";
import { NOT_KNOWN, significant } from "@/lib/view/number";
import { type CountedEvent, countedWords, countsIn, eventKindName } from "@/lib/view/partEvent";
import type { Kind } from "@/lib/view/partExperience";
import { day } from "@/lib/view/time";

/** What does not count stands back in grey, with the reason in a column of its own. */
function quiet({ countsAs }: CountedEvent, shown: ReactNode): ReactNode {
  return countsAs === "set aside" ? <span className="text-ink-3">{shown}</span> : shown;
}

const hoursOf = (value: number | null) => (value === null ? NOT_KNOWN : significant(value, 3));
const spareOf = ({ spareAtHand }: CountedEvent) =>
  spareAtHand === null ? NOT_KNOWN : spareAtHand ? "yes" : "no";

/** Whether a row counts in a rate; chosen, it leaves the rows that make up the count. */
function rateColumn(kind: Kind, header: string): Column<CountedEvent> {
  const word = (event: CountedEvent) => (countsIn(event, kind) ? "yes" : "no");
  return {
    ...{ key: kind, header, filter: "choice", priority: 1 },
    value: word,
    cell: (event) => quiet(event, word(event)),
  };
}

const COLUMNS: readonly Column<CountedEvent>[] = [
  {
    ...{ key: "when", header: "When, at the site", width: "9rem" },
    value: (event) => `${event.day} ${event.time}`,
    cell: (event) => quiet(event, `${day(event.day)}, ${event.time}`),
  },
  {
    ...{ key: "site", header: "Site", filter: "choice" },
    value: (event) => event.siteCode,
    cell: (event) => quiet(event, event.siteCode),
  },
  {
    ...{ key: "place", header: "Line and place", filter: "text" },
    value: (event) => event.lineCode,
    word: (event) => [event.lineCode, event.machine, event.place].filter(Boolean).join(" "),
    cell: (event) =>
      quiet(event, [event.lineCode, event.machine, event.place].filter(Boolean).join(" ") || NOT_KNOWN),
  },
  {
    ...{ key: "kind", header: "Recorded as", filter: "choice" },
    value: (event) => eventKindName(event.kind),
    cell: (event) => quiet(event, eventKindName(event.kind)),
  },
  rateColumn("removals", "Removal"),
  rateColumn("failures", "Failure"),
  {
    ...{ key: "why", header: "Why", priority: 3, width: "10rem" },
    value: countedWords,
    cell: (event) => quiet(event, countedWords(event)),
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
    ...{ key: "spare", header: "Spare at hand", filter: "choice", priority: 3 },
    value: spareOf,
    cell: (event) => quiet(event, spareOf(event)),
  },
  {
    ...{ key: "source", header: "Source and number", filter: "text" },
    value: (event) => `${event.source} ${event.reference}`,
    cell: (event) => (
      <>
        {quiet(event, `${event.source} ${event.reference}`)}
        <WhereFrom entity="Event" id={event.id} of={event.reference} />
      </>
    ),
  },
  {
    ...{ key: "text", header: "Text", filter: "text", priority: 3, hidden: true, width: "12rem" },
    value: (event) => event.text,
    cell: (event) => quiet(event, event.text ?? ""),
  },
];

interface PartEventsTableProps {
  readonly number: string;
  readonly events: readonly CountedEvent[];
}

/** The events of a part, to filter by site and by what they count as. */
export function PartEventsTable({ number, events }: PartEventsTableProps) {
  return (
    <DataTable
      id="events"
      caption={`Events of ${number} in the last five years`}
      rows={events}
      columns={COLUMNS}
      rowKey={(event) => event.id}
      rowHref={(event) =>
        event.lineCode === null ? null : `/lines/${encodeURIComponent(event.lineCode)}#events`
      }
      initialSort={{ key: "when", descending: true }}
      noun="events"
      empty={
        <p>No event is recorded in the last five years. That is not a rate of zero: the family stands in.</p>
      }
    />
  );
}
