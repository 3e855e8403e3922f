import "server-only";
import type { Actor } from "@/lib/access/actor";
import { scopeOf } from "@/lib/access/policy";
import { date, id, instant, json, line, number, part, text, yesNo } from "@/lib/data/exports/columns";
import type { RecordList } from "@/lib/data/exports/recordList";

/** Decisions that hold figures of a site of theirs; the figures themselves are not in the list. */
function seenDecisions(actor: Actor) {
  const scope = scopeOf(actor.grants, "read");
  return scope === "all" ? {} : { siteIds: { hasSome: [...scope] } };
}

/** What figures and decisions are made with. */
export const basisLists: readonly RecordList[] = [
  {
    ...{
      name: "rules",
      title: "Compatibility rules",
      about: "What fits, in every version",
      page: "/rules",
      model: "compatibilityRule",
    },
    columns: [
      ...[
        id(),
        text("code", "Rule"),
        number("version", "Version"),
        text("kind", "Kind"),
        json("terms", "Asks for"),
        text("note", "Note"),
      ],
      ...[
        text("source", "Source"),
        text("evidence", "Evidence"),
        yesNo("retired", "Retired"),
        instant("changedAt", "Changed at"),
        text("changedBy", "Changed by"),
      ],
    ],
  },
  {
    ...{
      name: "assumptions",
      title: "Assumptions",
      about: "Sets of values, in every version",
      page: "/assumptions",
      model: "assumptionSet",
    },
    columns: [
      ...[
        id(),
        text("kind", "Set"),
        number("version", "Version"),
        json("values", "Values"),
        text("note", "Note"),
        text("owner", "Answers for it"),
      ],
      ...[instant("changedAt", "Changed at"), text("changedBy", "Changed by")],
    ],
  },
  {
    ...{
      name: "budget-rates",
      title: "Budget rates",
      about: "Rates losses are converted by",
      page: "/plans/inputs",
      model: "currencyRate",
    },
    key: ["currency"],
    columns: [
      text("currency", "Currency"),
      number("perEuro", "For one EUR"),
      date("validFrom", "Since"),
      text("source", "Source"),
    ],
  },
  {
    ...{
      name: "month-rates",
      title: "Rates by month",
      about: "Rates finance booked at",
      page: "/projects",
      model: "monthRate",
    },
    key: ["currency", "month"],
    columns: [
      ...[
        text("currency", "Currency"),
        date("month", "Month"),
        number("perEuro", "For one EUR"),
        text("source", "Source"),
        text("recordedBy", "Recorded by"),
      ],
    ],
  },
  {
    ...{
      name: "last-buys",
      title: "Decisions on last buys",
      about: "Who decided on a family, and when",
      page: "/spares",
      model: "buyDecision",
    },
    where: seenDecisions,
    columns: [
      ...[
        id(),
        text("family.maker", "Maker"),
        text("family.name", "Family"),
        id("familyId", "Family id"),
        date("decidedOn", "Decided on"),
      ],
      ...[
        text("decidedBy", "Decided by"),
        text("notice.document", "Notice"),
        id("supersededById", "Replaced by"),
        text("sheetHash", "SHA-256 of the sheet"),
      ],
    ],
  },
  {
    ...{
      name: "planned-removals",
      title: "Planned removals",
      about: "Units projects take out",
      page: "/projects",
      model: "plannedRemoval",
    },
    under: (where) => ({ project: { site: where } }),
    columns: [
      ...[
        id(),
        text("project.code", "Project"),
        id("projectId", "Project id"),
        ...line(),
        ...part(),
        number("units", "Units"),
      ],
      ...[date("leavesOn", "Leave on"), yesNo("kept", "Kept as spares")],
    ],
  },
];
