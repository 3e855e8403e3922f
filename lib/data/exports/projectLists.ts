import "server-only";
import { date, id, line, money, number, project, site, text } from "@/lib/data/exports/columns";
import type { RecordList } from "@/lib/data/exports/recordList";

const ofProject = { page: "/projects", under: (where: object) => ({ project: { site: where } }) };

/** Retrofit projects with their money. */
export const projectLists: readonly RecordList[] = [
  {
    ...{
      name: "project-records",
      title: "Projects as recorded",
      about: "Projects with budget and days",
      page: "/projects",
      model: "project",
    },
    under: (where) => ({ site: where }),
    columns: [
      ...[
        id(),
        ...site(),
        ...line(),
        text("code", "Code"),
        text("name", "Name"),
        text("status", "Status"),
        money("budget", "Original budget", "currency"),
      ],
      ...[
        text("currency", "Currency"),
        number("budgetRate", "Budget rate, for one EUR"),
        money("forecast", "Expected in the end", "currency"),
      ],
      ...[date("startsOn", "Starts"), date("endsOn", "Ends"), text("cause", "Cause")],
    ],
  },
  {
    ...{
      ...ofProject,
      name: "project-costs",
      title: "Orders and payments",
      about: "Money ordered and paid",
      model: "costEntry",
    },
    columns: [
      ...[
        id(),
        ...project(),
        text("kind", "Kind"),
        money("amount", "Amount", "project.currency"),
        text("project.currency", "Currency"),
      ],
      ...[
        date("spentOn", "On"),
        text("text", "Text"),
        text("reference", "Reference"),
        text("costClass", "Class"),
        text("orderReference", "Order"),
      ],
      ...[
        money("ownAmount", "Amount in its own currency", "ownCurrency"),
        text("ownCurrency", "Own currency"),
        number("rate", "Rate"),
        date("ratedOn", "Rate of"),
      ],
    ],
  },
  {
    ...{
      ...ofProject,
      name: "project-budgets",
      title: "Original budgets by class",
      about: "Budgets as they began",
      model: "budgetItem",
    },
    key: ["projectId", "costClass"],
    columns: [
      ...project(),
      text("costClass", "Class"),
      money("amount", "Amount", "project.currency"),
      text("project.currency", "Currency"),
    ],
  },
  {
    ...{
      ...ofProject,
      name: "budget-changes",
      title: "Changes of budgets",
      about: "Changes asked for and decided",
      model: "changeOrder",
    },
    columns: [
      ...[
        id(),
        ...project(),
        number("number", "Number"),
        text("what", "What"),
        text("why", "Why"),
        text("source", "Money from"),
      ],
      ...[
        text("state", "State"),
        text("askedBy", "Asked by"),
        date("askedOn", "Asked on"),
        text("decidedBy", "Decided by"),
      ],
      ...[date("decidedOn", "Decided on"), text("decisionWhy", "Reason")],
    ],
  },
  {
    ...{
      name: "budget-change-amounts",
      title: "Amounts of budget changes",
      about: "Amounts by class",
      page: "/projects",
      model: "changeAmount",
    },
    key: ["changeId", "costClass"],
    under: (where) => ({ change: { project: { site: where } } }),
    columns: [
      ...[
        ...project("change.project"),
        number("change.number", "Change"),
        id("changeId", "Change id"),
        text("costClass", "Class"),
      ],
      ...[money("amount", "Amount", "change.project.currency"), text("change.project.currency", "Currency")],
    ],
  },
  {
    ...{
      ...ofProject,
      name: "still-to-order",
      title: "Still to order",
      about: "What classes still need",
      model: "classForecast",
    },
    key: ["projectId", "costClass"],
    columns: [
      ...[
        ...project(),
        text("costClass", "Class"),
        money("toOrder", "Still to order", "project.currency"),
        text("project.currency", "Currency"),
      ],
      ...[date("statedOn", "Stated on"), text("statedBy", "Stated by")],
    ],
  },
  {
    ...{
      ...ofProject,
      name: "milestones",
      title: "Milestones",
      about: "What earns the budget",
      model: "milestone",
    },
    columns: [
      ...[
        id(),
        ...project(),
        number("sequence", "Number"),
        text("name", "Name"),
        number("weight", "Weight"),
        date("dueOn", "Due on"),
      ],
      ...[date("doneOn", "Done on"), text("axisStep", "Earned by step"), number("axisRound", "Round")],
    ],
  },
];
