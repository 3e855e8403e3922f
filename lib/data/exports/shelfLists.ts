import "server-only";
import { date, id, money, number, part, site, text, yesNo } from "@/lib/data/exports/columns";
import type { RecordList } from "@/lib/data/exports/recordList";
import { seenTransfers } from "@/lib/data/transferChange";

/** What lies on the shelves, and where it goes. */
export const shelfLists: readonly RecordList[] = [
  {
    ...{
      name: "stock",
      title: "Stock lots",
      about: "Lots on the shelves",
      page: "/spares",
      model: "stockLot",
    },
    under: (where) => ({ site: where }),
    columns: [
      ...[
        id(),
        ...site(),
        ...part(),
        text("part.description", "Description"),
        text("bin", "Bin"),
        text("revision", "Revision"),
      ],
      ...[text("state", "State"), number("quantity", "Pieces"), date("lastPoweredOn", "Last powered on")],
      ...[
        date("countedOn", "Counted on"),
        date("testedOn", "Tested under load on"),
        yesNo("originUnknown", "Origin not known"),
      ],
      ...[text("reservedFor", "Reserved for"), text("note", "Note"), text("evidence", "Evidence")],
    ],
  },
  {
    ...{
      name: "holds",
      title: "Pieces on hold",
      about: "Pieces put on hold and let go",
      page: "/care",
      model: "stockHold",
    },
    under: (where) => ({ lot: { site: where } }),
    columns: [
      ...[
        id(),
        ...site("lot.site"),
        ...part("lot.part"),
        text("lot.bin", "Bin"),
        id("lotId", "Lot id"),
        number("pieces", "Pieces"),
      ],
      ...[
        text("reason", "Reason"),
        date("heldOn", "On hold since"),
        text("heldBy", "By"),
        date("releasedOn", "Let go on"),
      ],
      ...[text("releasedBy", "Let go by"), text("releasedAs", "Let go as"), text("releaseNote", "Note")],
    ],
  },
  {
    ...{
      name: "care-given",
      title: "Storage care given",
      about: "Care given to lots",
      page: "/care",
      model: "storageCare",
    },
    under: (where) => ({ site: where }),
    columns: [
      ...[
        id(),
        ...site(),
        ...part(),
        id("lotId", "Lot id"),
        text("kind", "Kind"),
        date("doneOn", "Done on"),
        text("doneBy", "Done by"),
      ],
      ...[number("pieces", "Pieces"), number("failed", "Failed"), text("note", "Note")],
    ],
  },
  {
    ...{
      name: "counts",
      title: "Counts",
      about: "Counts of storerooms",
      page: "/counts",
      model: "stockCount",
    },
    under: (where) => ({ site: where }),
    columns: [
      ...[id(), ...site(), text("reference", "Count"), text("bins", "Bins"), yesNo("blind", "Book hidden")],
      ...[
        money("limitEuro", "Limit for a second person", "EUR"),
        date("openedOn", "Opened on"),
        text("openedBy", "Opened by"),
      ],
      ...[
        date("approvedOn", "Approved on"),
        text("approvedBy", "Approved by"),
        date("postedOn", "Booked on"),
        text("postedBy", "Booked by"),
      ],
    ],
  },
  {
    ...{
      name: "count-lines",
      title: "Lines of counts",
      about: "What was found, lot by lot",
      page: "/counts",
      model: "countLine",
    },
    under: (where) => ({ count: { site: where } }),
    columns: [
      ...[
        id(),
        ...site("count.site"),
        text("count.reference", "Count"),
        id("countId", "Count id"),
        ...part(),
      ],
      ...[
        id("lotId", "Lot id"),
        text("plate", "Plate as read"),
        text("bin", "Bin"),
        text("revision", "Revision"),
      ],
      ...[
        text("bookState", "State by the book"),
        number("bookQuantity", "Pieces by the book"),
        number("found", "Pieces found"),
      ],
      ...[text("state", "State found"), date("lastPoweredOn", "Last powered on"), yesNo("tested", "Tested")],
      ...[
        yesNo("originUnknown", "Origin not known"),
        text("holdReason", "On hold because"),
        text("note", "Note"),
      ],
      text("countedBy", "Counted by"),
    ],
  },
  {
    ...{
      name: "repairs",
      title: "Repairs",
      about: "Units sent for repair",
      page: "/repairs",
      model: "repairOrder",
    },
    under: (where) => ({ site: where }),
    columns: [
      ...[
        id(),
        ...site(),
        ...part(),
        text("reference", "Reference"),
        text("serial", "Serial"),
        date("sentOn", "Sent on"),
      ],
      ...[
        date("dueOn", "Due on"),
        date("returnedOn", "Back on"),
        text("finding", "Finding"),
        text("repairer", "Repairer"),
      ],
      ...[text("fault", "Fault"), money("cost", "Cost", "costCurrency"), text("costCurrency", "Currency")],
      ...[date("warrantyUntilOn", "Warranty until"), text("note", "Note")],
    ],
  },
  {
    ...{
      name: "transfers",
      title: "Transfers",
      about: "Pieces from one site to another",
      page: "/pool",
      model: "transfer",
    },
    where: seenTransfers,
    columns: [
      ...[
        id(),
        ...part(),
        text("fromSite.code", "From"),
        id("fromSiteId", "From id"),
        text("toSite.code", "To"),
        id("toSiteId", "To id"),
      ],
      ...[
        text("bin", "Bin"),
        text("revision", "Revision"),
        number("pieces", "Pieces"),
        text("state", "State"),
        text("refusal", "Refused because"),
      ],
    ],
  },
];
