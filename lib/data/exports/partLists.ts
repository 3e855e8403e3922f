import "server-only";
import { date, id, money, number, part, share, site, text } from "@/lib/data/exports/columns";
import type { RecordList } from "@/lib/data/exports/recordList";

/** What can be had. */
export const partLists: readonly RecordList[] = [
  {
    ...{ name: "families", title: "Families", about: "Families of parts", page: "/parts", model: "family" },
    columns: [
      ...[
        id(),
        text("maker", "Maker"),
        text("name", "Family"),
        text("itemClass", "Class"),
        text("description", "Description"),
      ],
    ],
  },
  {
    ...{ name: "part-records", title: "Parts as recorded", page: "/parts", model: "part" },
    about: "Parts with price, lead time and repair",
    columns: [
      ...[id(), text("maker", "Maker"), text("number", "Number"), text("description", "Description")],
      ...[text("itemClass", "Class"), text("family.name", "Family"), id("familyId", "Family id")],
      ...[
        money("price", "Price", "priceCurrency"),
        text("priceCurrency", "Currency"),
        date("pricedOn", "Priced on"),
      ],
      ...[
        number("leadWeeks", "Lead time, typical", "weeks"),
        number("leadWeeksP80", "Lead time, 80 %", "weeks"),
      ],
      ...[
        share("repairYield", "Repaired units usable"),
        number("repairTurnaroundDays", "Repair takes", "days"),
      ],
      ...[number("powerKw", "Rated power", "kW"), number("profileFamily", "Profile family")],
      id("mergedIntoId", "Merged into"),
    ],
  },
  {
    ...{ name: "part-spellings", title: "Spellings of parts", page: "/parts", model: "partAlias" },
    about: "Other spellings and storeroom numbers",
    under: (where) => ({ OR: [{ siteId: null }, { site: where }] }),
    columns: [id(), ...part(), ...site(), text("alias", "Spelling")],
  },
  {
    ...{
      name: "successors",
      title: "Successors",
      about: "Parts that take another's place",
      page: "/parts",
      model: "successor",
    },
    columns: [
      ...[
        id(),
        ...part(),
        text("successor.maker", "Successor's maker"),
        text("successor.number", "Successor's number"),
      ],
      ...[id("successorId", "Successor id"), text("condition", "Fits when")],
    ],
  },
  {
    ...{ name: "supply-dates", title: "Supply dates", page: "/parts", model: "lifecycleFact" },
    about: "Sourced statements about supply",
    columns: [
      ...[
        id(),
        ...part(),
        text("family.name", "Family"),
        id("familyId", "Family id"),
        date("noticeOn", "Notice"),
      ],
      ...[
        date("lastOrderOn", "Last order"),
        date("lastShipOn", "Last ship"),
        date("repairUntilOn", "Repair until"),
      ],
      ...[date("orderByOn", "Order by"), text("source", "Source"), date("checkedOn", "Checked on")],
      ...[date("recordedOn", "Recorded on"), text("evidence", "Evidence")],
    ],
  },
  {
    ...{
      name: "notices",
      title: "Notices",
      about: "Makers' notices as confirmed",
      page: "/notices",
      model: "notice",
    },
    columns: [
      ...[
        id(),
        text("maker", "Maker"),
        text("document", "Document"),
        date("noticeOn", "Notice"),
        date("lastOrderOn", "Last order"),
      ],
      ...[
        date("lastShipOn", "Last ship"),
        date("repairUntilOn", "Repair until"),
        date("orderByOn", "Order by"),
      ],
      ...[
        text("patterns", "Parts as confirmed"),
        text("successor", "Successor as written"),
        text("note", "Note"),
      ],
      ...[
        date("checkedOn", "Checked on"),
        date("recordedOn", "Recorded on"),
        text("recordedBy", "Recorded by"),
      ],
      text("fileHash", "SHA-256 of the notice"),
    ],
  },
];
