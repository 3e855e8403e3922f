import type { Deed } from "@/lib/access/policy";
import type { Of } from "@/test/support/access/rules";

/** Route handlers that ask for something else than a session, each with its reason; tests of their own try them. */
export const otherRoutes: Readonly<Record<string, string>> = {
  "GET /api/auth/[...all]": "is the sign-in itself",
  "POST /api/auth/[...all]": "is the sign-in itself",
  "GET /api/calendar/[token]": "is opened by the secret address of a person's own calendar",
  "POST /api/first-admin": "is opened by a one-time link while nobody can sign in",
  "GET /api/reading": "keeps how a device reads; shows nothing",
  "GET /api/words/[file]": "is the words of a language, the same for everybody",
  "POST /api/invitation": "is opened by the one-time link of the invited",
  "GET /api/health": "tells machines whether the app is up",
  "GET /api/metrics": "is opened by a token of the environment",
  "GET /api/v1/openapi.json": "says what the interface does, and holds no data",
  "GET /api/v1/[...path]": "is opened by an access key",
  "POST /api/v1/[...path]": "is opened by an access key",
  "PATCH /api/v1/[...path]": "is opened by an access key",
  "DELETE /api/v1/[...path]": "is opened by an access key",
};

/** Files sent as they lie there, to everybody. */
export const openFiles: Readonly<Record<string, string>> = {
  "app/icon.svg": "the mark in the browser's tab",
  "public/card-worker.js": "keeps the night card on the device; holds no data",
};

/** What a route needs, whose its thing is, what its address names, and what stands behind the question mark. */
export type RouteRule = readonly [
  needs: Deed,
  of: Of,
  params?: Readonly<Record<string, string>>,
  search?: Readonly<Record<string, string>>,
];

/** Who may ask which route; words behind the question mark that are names of known things stand for these. */
export const routes: Readonly<Record<string, RouteRule>> = {
  "GET /api/axes": ["read", "anybody"],
  "GET /api/example/[file]": ["register:import", "anybody", { file: "exampleFile" }],
  "GET /api/export/[name]": ["read", "anybody", { name: "listName" }, { format: "json" }],
  "GET /api/import/pattern": ["register:import", "anybody", {}, { register: "events" }],
  "GET /api/last-buy": ["read", "site", {}, { decision: "decisionId" }],
  "GET /api/notices/[noticeId]": ["read", "anybody", { noticeId: "noticeId" }],
  "GET /api/plans/[id]/request": ["read", "site", { id: "planId" }],
  "GET /api/provenance": ["read", "site", {}, { entity: "StockLot", id: "lotId" }],
  "GET /api/report/[id]": ["read", "site", { id: "issueId" }, { as: "xlsx" }],
  "GET /api/review/[id]": ["read", "site", { id: "reviewId" }],
  "GET /api/scope/[code]": ["read", "site", { code: "lineCode" }],
  "GET /api/search": ["read", "anybody", {}, { q: "searched" }],
  "GET /api/whole": ["people:write", "group"],
  "POST /api/import/file": ["register:import", "anybody", {}, { register: "stock", name: "shelf.csv" }],
  "POST /api/whole": ["people:write", "group"],
};
