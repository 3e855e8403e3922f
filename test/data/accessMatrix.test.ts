import { afterAll, beforeAll, expect, test, vi } from "vitest";
import { amountIn, knownAmounts } from "@/test/support/access/amounts";
import { deskActions } from "@/test/support/access/deskActions";
import { type Ground, makeGround, OTHER, OWN, WORDS } from "@/test/support/access/ground";
import { TEST_SECRET } from "@/test/support/access/inRequest";
import { pages } from "@/test/support/access/pages";
import { cookieWith, expected, makeVisitors, type Visitor } from "@/test/support/access/people";
import { routes } from "@/test/support/access/routes";
import { holdWrites, openAction, tryAction } from "@/test/support/access/tryAction";
import { tryPage } from "@/test/support/access/tryPage";
import { tryRoute } from "@/test/support/access/tryRoute";
import { workActions } from "@/test/support/access/workActions";
import { type FreshDatabase, freshDatabase } from "@/test/support/database";

vi.setConfig({ testTimeout: 120_000, hookTimeout: 120_000 });

const actions = { ...workActions, ...deskActions };
let fresh: FreshDatabase;
let ground: Ground;
let visitors: Visitor[];

beforeAll(async () => {
  fresh = await freshDatabase("access");
  vi.stubEnv("BETTER_AUTH_SECRET", TEST_SECRET);
  vi.stubEnv("BETTER_AUTH_URL", "http://127.0.0.1:3999");
  ground = await makeGround(fresh.url);
  visitors = await makeVisitors({ ...ground, projectId: String(ground.known.projectId) });
  await holdWrites();
});
afterAll(async () => {
  vi.unstubAllEnvs();
  await fresh.close();
});

/** Each works out the whole group, or makes files, before it writes. */
const SLOW = [
  ...["report#giveOutReport", "review#closeThisReview", "moved#takeThisSnapshot", "plans#keepThisPlan"],
  ...[
    "plans#makeThisBoard",
    "plans/[id]#fillThisByRanking",
    "plans/[id]#fillThisBoard",
    "plans#startThisProject",
  ],
];

/**
 * Of all who try, those between whom an endpoint that reads can tell: what it needs and where is the same for the
 * others, and reading is what takes the time.
 */
const few = () => {
  const left = ["technician", "engineer", "approver"];
  return visitors.filter(
    ({ role, place }) => !left.includes(role ?? "") && !(role === "planner" && place === "other"),
  );
};

test.each(Object.entries(actions))("action %s", async (name, rule) => {
  const opened = await openAction(name, rule, ground.known);
  const [needs, of] = rule;
  const trying = SLOW.includes(name) ? few() : visitors;
  // One after the other: what each writes is held back at its end, and would stand in the way of the next until then.
  const found: string[][] = [];
  for (const visitor of trying) found.push([visitor.who, await tryAction(visitor, opened)]);
  const wanted = trying.map((visitor) => [visitor.who, expected(visitor, needs, of)]);
  expect(found).toEqual(wanted);
});

/** What somebody must find on no page, by where they have a role. */
const strange = ({ place }: Visitor) =>
  [OWN, OTHER].filter(
    (_, i) =>
      place !== "all" && place !== (["own", "other"] as const)[i] && !(place === "project" && i === 0),
  );

test.each(Object.entries(pages))("page %s", async (address, rule) => {
  const [needs, of] = rule;
  const trying = few();
  const found = trying.map(async (visitor) => {
    const { verdict, words } = await tryPage(visitor.cookie, { address, rule, known: ground.known });
    const leaked = strange(visitor).flatMap((code) => WORDS[code]?.exec(words)?.[0] ?? []);
    return [visitor.who, verdict, ...leaked];
  });
  const wanted = trying.map((visitor) => [visitor.who, expected(visitor, needs, of)]);
  expect(await Promise.all(found)).toEqual(wanted);
});

test.each(Object.entries(routes))("route %s", async (name, rule) => {
  const [needs, of] = rule;
  const trying = few();
  const found = trying.map(async (visitor) => {
    const { verdict, words } = await tryRoute(visitor.cookie, { name, rule, known: ground.known });
    const leaked = strange(visitor).flatMap((code) => WORDS[code]?.exec(words)?.[0] ?? []);
    return [visitor.who, verdict, ...leaked];
  });
  const wanted = trying.map((visitor) => [visitor.who, expected(visitor, needs, of)]);
  expect(await Promise.all(found)).toEqual(wanted);
});

test("who sees no amounts at a site finds none on any page", async () => {
  const { own } = ground;
  const cookie = await cookieWith({ role: "engineer", siteId: own, without: ["money:read"] });
  const amounts = await knownAmounts();
  expect(amounts.size).toBeGreaterThan(20);
  const told: string[] = [];
  for (const [address, rule] of Object.entries(pages)) {
    const { verdict, words } = await tryPage(cookie, { address, rule, known: ground.known });
    const found = verdict === "let in" ? amountIn(words, amounts) : null;
    if (found !== null) told.push(`${address}: ${found}`);
  }
  expect(told).toEqual([]);
});
