import "server-only";
import type { Actor } from "@/lib/access/actor";
import { readWholeAudit } from "@/lib/data/audit";
import { type FigureList, figureList } from "@/lib/data/exports/figureList";
import { readAuditQuestion } from "@/lib/view/audit/auditQuestion";
import { deedWords } from "@/lib/view/audit/deedWords";

/** What people did, in words, narrowed as the page is. */
export const historyLists: readonly FigureList[] = [
  figureList({
    ...{ name: "history", title: "Changes", about: "Who changed what, when and why", page: "/audit" },
    read: (actor: Actor, { asked }) => readWholeAudit(actor, readAuditQuestion(Object.fromEntries(asked))),
    columns: [
      ["id", "id", "Id", ({ id }) => id],
      ["at", "instant", "When", ({ at }) => at],
      ["who", "text", "Who", ({ who }) => who ?? "Ebbline itself"],
      ["byKey", "text", "By the access key", ({ byKey }) => byKey],
      ["what", "text", "What was done", ({ deed }) => deedWords(deed)],
      ["deed", "text", "Deed", ({ deed }) => deed],
      ["site", "text", "Site", ({ siteCode }) => siteCode],
      ["to", "text", "To what", ({ what }) => what?.label ?? null],
      [
        "changes",
        "text",
        "Before and after",
        ({ changes }) =>
          changes?.map(({ field, from, to }) => `${field}: ${from ?? "–"} → ${to ?? "–"}`).join("; ") ?? null,
      ],
      ["why", "text", "Why", ({ why }) => why],
    ],
  }),
];
