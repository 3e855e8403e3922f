import "server-only";
import { date, id, instant, json, line, number, part, site, text, yesNo } from "@/lib/data/exports/columns";
import type { RecordList } from "@/lib/data/exports/recordList";
import { visibleBatches } from "@/lib/data/intake/batch";
import { atSites } from "@/lib/data/scope";

/** What was said, loaded and given out, and by whom. */
export const trailLists: readonly RecordList[] = [
  {
    ...{
      name: "reviews",
      title: "Weekly reviews",
      about: "Meetings about spares",
      page: "/review",
      model: "review",
    },
    under: (where) => ({ site: where }),
    columns: [
      ...[
        id(),
        ...site(),
        date("heldOn", "Held on"),
        text("openedBy", "Opened by"),
        instant("closedAt", "Closed at"),
        text("closedBy", "Closed by"),
      ],
    ],
  },
  {
    ...{
      name: "review-notes",
      title: "Notes of reviews",
      about: "What reviews wrote down",
      page: "/review",
      model: "reviewNote",
    },
    key: ["reviewId", "topic"],
    under: (where) => ({ review: { site: where } }),
    columns: [
      ...[
        id("reviewId", "Review id"),
        ...site("review.site"),
        date("review.heldOn", "Held on"),
        text("topic", "Topic"),
        text("text", "Text"),
      ],
    ],
  },
  {
    ...{
      name: "actions",
      title: "Actions",
      about: "What somebody is to do by a day",
      page: "/review",
      model: "reviewAction",
    },
    under: (where) => ({ site: where }),
    columns: [
      ...[
        id(),
        ...site(),
        text("text", "What"),
        ...part(),
        ...line(),
        text("owner.name", "Who"),
        id("ownerId", "Person id"),
      ],
      ...[
        date("raisedOn", "Raised on"),
        date("dueOn", "Due on"),
        text("state", "State"),
        date("settledOn", "Settled on"),
      ],
      ...[text("reason", "Reason"), id("reviewId", "Review id")],
    ],
  },
  {
    ...{
      name: "purchases",
      title: "Purchases of reviews",
      about: "Parts reviews decided to buy",
      page: "/review",
      model: "reviewBuy",
    },
    under: (where) => ({ review: { site: where } }),
    columns: [
      ...[
        id(),
        ...site("review.site"),
        date("review.heldOn", "Held on"),
        id("reviewId", "Review id"),
        ...part(),
      ],
      ...[number("quantity", "Pieces"), text("reason", "Reason")],
    ],
  },
  {
    ...{
      name: "imports",
      title: "Files loaded",
      about: "Register files and what they did",
      page: "/import",
      model: "importBatch",
    },
    where: visibleBatches,
    columns: [
      ...[
        id(),
        text("register", "Register"),
        text("fileName", "File"),
        text("fileHash", "SHA-256"),
        text("state", "State"),
      ],
      ...[
        text("siteCodes", "Sites"),
        number("added", "Added"),
        number("changed", "Changed"),
        number("unchanged", "Unchanged"),
      ],
      ...[
        number("refused", "Refused"),
        instant("createdAt", "Loaded at"),
        instant("committedAt", "Taken over at"),
        instant("undoneAt", "Taken back at"),
      ],
    ],
  },
  {
    ...{
      name: "reports",
      title: "Reports given out",
      about: "Reports in the archive",
      page: "/report/archive",
      model: "reportIssue",
    },
    where: (actor) => atSites(actor, "read"),
    columns: [
      ...[
        id(),
        text("kind", "Kind"),
        ...site(),
        text("period", "Period"),
        date("asOf", "As of"),
        number("dataVersion", "Data version"),
      ],
      ...[
        text("engine", "Engine"),
        text("assumptions", "Assumptions"),
        text("issuedBy", "Given out by"),
        instant("issuedAt", "Given out at"),
      ],
    ],
  },
  {
    ...{
      name: "audit",
      title: "Audit trail",
      about: "Who changed what",
      page: "/export",
      model: "auditEntry",
      atAllSites: "people:write",
    },
    columns: [
      ...[
        id(),
        instant("at", "At"),
        text("user.name", "Who"),
        id("userId", "Person id"),
        text("keyName", "By key"),
        text("deed", "Deed"),
        text("entity", "Of"),
      ],
      ...[
        id("entityId", "Its id"),
        id("siteId", "Site id"),
        json("before", "Before"),
        json("after", "After"),
        text("why", "Why"),
      ],
    ],
  },
  {
    ...{
      name: "people",
      title: "People",
      about: "Accounts",
      page: "/people",
      model: "user",
      atAllSites: "people:write",
    },
    columns: [
      ...[
        id(),
        text("name", "Name"),
        text("email", "E-mail"),
        yesNo("banned", "Closed"),
        instant("createdAt", "Since"),
      ],
    ],
  },
  {
    ...{
      name: "roles",
      title: "Roles of people",
      about: "Who may do what where",
      page: "/people",
      model: "grant",
      atAllSites: "people:write",
    },
    columns: [id(), text("user.name", "Who"), id("userId", "Person id"), text("role", "Role"), ...site()],
  },
];
