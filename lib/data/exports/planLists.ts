import "server-only";
import type { Actor } from "@/lib/access/actor";
import { type Deed, scopeOf } from "@/lib/access/policy";
import { date, id, instant, line, money, number, site, text, yesNo } from "@/lib/data/exports/columns";
import type { RecordList } from "@/lib/data/exports/recordList";
import { atSites, sites } from "@/lib/data/scope";

/**
 * As the page of planning inputs shows them: money of the group only to who reads all sites, and money at all only where
 * amounts are shown. The column of values is none of money, since it also holds hands and hours.
 */
function planFigures(actor: Actor) {
  if (scopeOf(actor.grants, "money:read") === "all") return {};
  return { OR: [{ currency: null, ...figuresWhere(actor, "read") }, figuresWhere(actor, "money:read")] };
}

function figuresWhere(actor: Actor, deed: Deed) {
  const scope = scopeOf(actor.grants, deed);
  if (scope === "all") return {};
  if (scope.length === 0) return { id: { in: [] } };
  const own = sites(actor, deed);
  return {
    OR: [
      { siteId: { not: null }, site: own },
      { region: { sites: { some: { site: own } } } },
      { obligationId: { not: null }, obligation: atSites(actor, deed) },
      { siteId: null, regionId: null, obligationId: null, kind: { notIn: ["budget", "sign_off_above"] } },
    ],
  };
}

/** Plans with what they rest on. */
export const planLists: readonly RecordList[] = [
  {
    ...{ name: "plans", title: "Plans", about: "Plans of lines to fund", page: "/plans", model: "plan" },
    under: (where) => ({ lines: { some: { line: { site: where } } } }),
    columns: [
      ...[id(), text("name", "Name"), text("kind", "Kind"), number("year", "Year"), text("status", "Status")],
      ...[
        date("asOf", "As of"),
        text("rankedBy", "Ranked by"),
        number("issue", "Issue"),
        id("createdBy", "Made by, person id"),
        instant("createdAt", "Made at"),
      ],
    ],
  },
  {
    ...{ name: "plan-budgets", title: "Budgets of plans", page: "/plans", model: "plan" },
    about: "Budgets of plans all of whose lines you see",
    under: (where) => ({ lines: { some: {}, every: { line: { site: where } } } }),
    columns: [id(), text("name", "Name"), number("year", "Year"), money("budget", "Budget", "EUR")],
  },
  {
    ...{
      name: "plan-lines",
      title: "Lines of plans",
      about: "Your sites' lines in plans",
      page: "/plans",
      model: "planLine",
    },
    under: (where) => ({ line: { site: where } }),
    columns: [
      ...[
        id(),
        text("plan.name", "Plan"),
        id("planId", "Plan id"),
        ...site("line.site"),
        ...line(),
        number("rank", "Rank"),
      ],
      ...[
        money("cost", "Cost of the retrofit", "EUR"),
        money("stopLoss", "Stop loss a year", "EUR"),
        number("score", "Score"),
      ],
      ...[
        yesNo("funded", "Funded"),
        text("pin", "Pinned"),
        text("pinReason", "Pinned because"),
        text("pinnedBy", "Pinned by"),
      ],
    ],
  },
  {
    ...{
      name: "plan-slots",
      title: "Ways placed in plans",
      about: "Ways in their place in time",
      page: "/plans",
      model: "planSlot",
    },
    under: (where) => ({ planLine: { line: { site: where } } }),
    columns: [
      ...[
        id(),
        text("planLine.plan.name", "Plan"),
        ...line("planLine.line"),
        id("planLineId", "Plan line id"),
      ],
      ...[text("option", "Way"), text("slot", "When")],
    ],
  },
  {
    ...{
      name: "plan-figures",
      title: "Planning figures",
      about: "Budgets, hands and hours plans rest on",
      page: "/plans/inputs",
      model: "planFigure",
    },
    where: planFigures,
    columns: [
      ...[
        id(),
        text("kind", "Kind"),
        ...site(),
        text("region.name", "Region"),
        text("obligation.title", "Duty"),
        number("year", "Year"),
      ],
      ...[
        number("value", "Value"),
        text("currency", "Currency"),
        text("source", "Source"),
        text("owner", "Answers for it"),
      ],
      ...[date("statedOn", "Stated on"), text("evidence", "Evidence")],
    ],
  },
  {
    ...{
      name: "approval-freezes",
      title: "Freezes of approvals",
      about: "When no request is taken",
      page: "/plans/inputs",
      model: "approvalFreeze",
    },
    columns: [
      ...[
        id(),
        text("name", "Name"),
        date("freezesOn", "From"),
        date("coversFrom", "Covers from"),
        date("coversTo", "Covers to"),
      ],
      ...[text("source", "Source"), text("owner", "Answers for it")],
    ],
  },
  {
    ...{
      name: "precedences",
      title: "Lines before lines",
      about: "Whose work must be over first",
      page: "/plans/inputs",
      model: "planPrecedence",
    },
    under: (where) => ({ first: { site: where }, following: { site: where } }),
    columns: [
      ...[
        id(),
        text("first.code", "First"),
        id("firstId", "First id"),
        text("following.code", "Then"),
        id("thenId", "Then id"),
      ],
      ...[text("reason", "Reason"), text("source", "Source"), text("owner", "Answers for it")],
    ],
  },
  {
    ...{
      name: "accepted-risks",
      title: "Risks accepted",
      about: "Lines left as they are, on a name",
      page: "/plans/inputs",
      model: "riskAcceptance",
    },
    under: (where) => ({ line: { site: where } }),
    columns: [
      ...[
        id(),
        ...site("line.site"),
        ...line(),
        text("acceptedBy", "Accepted by"),
        date("acceptedOn", "Accepted on"),
        date("until", "Until"),
      ],
      ...[
        text("reason", "Reason"),
        money("loss", "Stop loss a year", "EUR"),
        money("lossLow", "Loss, low", "EUR"),
      ],
      ...[
        money("lossHigh", "Loss, high", "EUR"),
        date("endedOn", "Ended on"),
        text("recordedBy", "Recorded by"),
      ],
    ],
  },
];
