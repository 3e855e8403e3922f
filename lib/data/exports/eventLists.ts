import "server-only";
import { date, id, instant, line, number, part, site, text, yesNo } from "@/lib/data/exports/columns";
import type { RecordList } from "@/lib/data/exports/recordList";
import { addDays, type IsoDate } from "@/lib/kernel/isoDate";

const since = (word: string, asOf: IsoDate) => {
  const days = Number(word);
  if (!(days > 0 && days < 100_000)) return {};
  const from = addDays(asOf, -Math.floor(days));
  return {
    happenedAt: { gte: new Date(`${from}T00:00:00Z`), lt: new Date(`${addDays(asOf, 1)}T00:00:00Z`) },
  };
};

/** What happened, and what is due. */
export const eventLists: readonly RecordList[] = [
  {
    ...{
      name: "events",
      title: "Events",
      about: "Failures, removals and stops",
      page: "/events",
      model: "event",
    },
    under: (where) => ({ site: where }),
    filters: { line: (code) => ({ line: { code } }), days: since },
    columns: [
      ...[id(), ...site(), ...line(), text("machine.code", "Machine"), id("machineId", "Machine id")],
      ...[
        text("position.designation", "Place"),
        id("positionId", "Place id"),
        ...part(),
        text("itemClass", "Class"),
      ],
      ...[
        text("kind", "Kind"),
        instant("happenedAt", "Happened at"),
        number("downtimeHours", "Downtime", "h"),
      ],
      ...[
        number("logisticHours", "Waited for an item", "h"),
        yesNo("spareAtHand", "Spare at hand"),
        text("source", "Source"),
      ],
      ...[
        text("reference", "Reference"),
        text("text", "Text"),
        text("commonCause", "Common cause"),
        text("setAside", "Does not count because"),
      ],
    ],
  },
  {
    ...{ name: "event-pairs", title: "Pairs of events settled", page: "/events", model: "eventMatch" },
    about: "What a person said of two records",
    under: (where) => ({ site: where }),
    columns: [
      ...[
        id(),
        ...site(),
        id("keptId", "Counts"),
        text("kept.reference", "Reference that counts"),
        id("otherId", "Other"),
      ],
      ...[text("other.reference", "Other reference"), text("verdict", "Verdict"), text("reason", "Reason")],
      ...[date("decidedOn", "Decided on"), text("decidedBy", "Decided by")],
    ],
  },
  {
    ...{
      name: "sightings",
      title: "Network lists",
      about: "What network lists saw",
      page: "/events",
      model: "sighting",
    },
    under: (where) => ({ site: where }),
    columns: [
      ...[
        id(),
        ...site(),
        date("seenOn", "Seen on"),
        text("source", "Source"),
        text("line", "Line"),
        text("machine", "Machine"),
        text("network", "Network"),
      ],
      ...[
        text("controller", "Controller"),
        text("slot", "Slot"),
        text("address", "Address"),
        text("name", "Name"),
        text("maker", "Maker"),
      ],
      ...[
        text("number", "Part number"),
        text("revision", "Revision"),
        text("firmware", "Firmware"),
        text("serial", "Serial"),
        text("status", "Status"),
      ],
    ],
  },
  {
    ...{
      name: "duties",
      title: "Safety and legal dates",
      about: "Dates that bind",
      page: "/dates",
      model: "obligation",
    },
    under: (where) => ({ site: where }),
    columns: [
      ...[
        id(),
        ...site(),
        ...line(),
        text("kind", "Kind"),
        text("title", "What"),
        date("dueOn", "Due on"),
        text("source", "Source"),
      ],
      ...[
        text("owner", "Answers for it"),
        date("recordedOn", "Recorded on"),
        date("doneOn", "Done on"),
        text("evidence", "Evidence"),
      ],
    ],
  },
  {
    ...{
      name: "shutdowns",
      title: "Shutdown windows",
      about: "Days on which work can be done",
      page: "/projects/calendar",
      model: "shutdownWindow",
    },
    under: (where) => ({ site: where }),
    columns: [
      ...[
        id(),
        ...site(),
        ...line(),
        text("name", "Name"),
        date("startsOn", "Starts"),
        date("endsOn", "Ends"),
      ],
      ...[number("usableHours", "Usable", "h"), text("note", "Note")],
    ],
  },
];
