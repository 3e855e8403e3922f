import { afterAll, beforeAll, expect, test, vi } from "vitest";
import { type Actor, currentActor, readAmountsReader } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { savableLists } from "@/lib/data/savedList";
import { amountIn, knownAmounts } from "@/test/support/access/amounts";
import { deskActions } from "@/test/support/access/deskActions";
import { type Ground, makeGround, OTHER, OWN, WORDS } from "@/test/support/access/ground";
import { inRequest, TEST_SECRET } from "@/test/support/access/inRequest";
import { pages } from "@/test/support/access/pages";
import { cookieWith, expected, makeVisitors, type Visitor } from "@/test/support/access/people";
import { routes } from "@/test/support/access/routes";
import type { Known } from "@/test/support/access/sampleInput";
import { holdWrites, openAction, tryAction } from "@/test/support/access/tryAction";
import { tryPage, wordsOf } from "@/test/support/access/tryPage";
import { tryRoute } from "@/test/support/access/tryRoute";
import { workActions } from "@/test/support/access/workActions";
import { callInterface } from "@/test/support/callInterface";
import { type FreshDatabase, freshDatabase } from "@/test/support/database";
import { tokenOf } from "@/test/support/interfaceCalls";

vi.setConfig({ testTimeout: 120_000, hookTimeout: 120_000 });

const actions = { ...workActions, ...deskActions };
let fresh: FreshDatabase;
let ground: Ground;
let visitors: Visitor[];
/** Somebody who sees no amounts at the own site, and a key of theirs. */
let masked: { readonly cookie: string; readonly token: string };

beforeAll(async () => {
  fresh = await freshDatabase("access");
  vi.stubEnv("BETTER_AUTH_SECRET", TEST_SECRET);
  vi.stubEnv("BETTER_AUTH_URL", "http://127.0.0.1:3999");
  ground = await makeGround(fresh.url);
  visitors = await makeVisitors({ ...ground, projectId: String(ground.known.projectId) });
  const cookie = await cookieWith({ role: "engineer", siteId: ground.own, without: ["money:read"] });
  masked = { cookie, token: await tokenOf(await somebody(cookie)) };
  await holdWrites();
});
afterAll(async () => {
  vi.unstubAllEnvs();
  await fresh.close();
});

/** Who the session of a cookie is of. */
async function somebody(cookie: string): Promise<Actor> {
  const actor = await inRequest(cookie, currentActor);
  if (actor === null) throw new Error("nobody is signed in");
  return actor;
}

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

/** Pages that are closed to who sees no amounts. */
const ABOUT_MONEY: readonly string[] = [
  ...["/assumptions", "/last-buy/[familyId]", "/last-buy/decisions/[decisionId]", "/moved", "/plans"],
  ...["/plans/[id]", "/plans/[id]/choices", "/plans/[id]/money", "/plans/[id]/request", "/plans/[id]/solve"],
  ...["/plans/compare", "/plans/inputs", "/plans/new", "/projects/[code]/benefit", "/projects/[code]/close"],
  ...["/projects/[code]/money", "/report", "/report/archive", "/report/archive/[id]", "/spend"],
];

test("who sees no amounts at a site finds none on any page", async () => {
  const { cookie } = masked;
  const amounts = await knownAmounts();
  expect(amounts.size).toBeGreaterThan(20);
  const told: string[] = [];
  const closed: string[] = [];
  for (const [address, rule] of Object.entries(pages)) {
    const { verdict, words } = await tryPage(cookie, { address, rule, known: ground.known });
    const found = verdict === "let in" ? amountIn(words, amounts) : null;
    if (found !== null) told.push(`${address}: ${found}`);
    if (verdict === "not there" && rule[0] === "read" && rule[1] !== "group") closed.push(address);
  }
  expect(told).toEqual([]);
  // What has no use without amounts, and nothing else.
  expect(closed).toEqual(ABOUT_MONEY);
});

/** What an answer says, one word or number a line, as far as it is JSON. */
const saidIn = (words: string) => {
  try {
    return wordsOf(JSON.parse(words));
  } catch {
    return words;
  }
};

test("nor in any file or list, nor by the interface", async () => {
  const { cookie, token } = masked;
  const amounts = await knownAmounts();
  const told: string[] = [];
  const look = (where: string, words: string) => {
    const found = amountIn(saidIn(words), amounts);
    if (found !== null) told.push(`${where}: ${found}`);
  };
  for (const [name, rule] of Object.entries(routes)) {
    const { verdict, words } = await tryRoute(cookie, { name, rule, known: ground.known });
    if (verdict === "let in") look(name, words);
  }
  const lists = savableLists(await somebody(cookie));
  expect(lists.length).toBeGreaterThan(30);
  const byList = "GET /api/export/[name]";
  for (const { name: listName } of lists) {
    const known = { ...ground.known, listName };
    const { verdict, words } = await tryRoute(cookie, {
      name: byList,
      rule: routes[byList] ?? ["read", "anybody"],
      known,
    });
    expect([listName, verdict]).toEqual([listName, "let in"]);
    look(listName, words);
  }
  // Another system reads what the person's pages about money show: nothing at such a site.
  for (const path of ["/lines", "/parts", "/repairs", "/projects", "/stock-lots"]) {
    const { status, json } = await callInterface({ path, token });
    expect([path, status]).toEqual([path, 200]);
    look(path, JSON.stringify(json));
  }
  expect(told).toEqual([]);
});

test("a mail that tells amounts is written for nobody to whom they are not shown", async () => {
  const whole = await cookieWith({ role: "engineer", siteId: ground.own });
  const people = await Promise.all([whole, masked.cookie].map(somebody));
  const readers = await Promise.all(people.map(({ userId }) => readAmountsReader(userId)));
  expect(readers.map((one) => one?.grants.length)).toEqual([1, 0]);
});

test("after the last day a contractor finds no project, and before it nothing but theirs", async () => {
  const projectId = String(ground.known.projectId);
  const ended = await cookieWith({ role: "contractor", projectId, endsOn: "2020-12-31" });
  const there = await cookieWith({ role: "contractor", projectId, endsOn: "2099-12-31" });
  const address = "/projects/[code]";
  const open = (cookie: string, known: Known) =>
    tryPage(cookie, { address, rule: pages[address] ?? ["read", "project"], known }).then(
      ({ verdict }) => verdict,
    );
  const other = await database().project.findFirstOrThrow({ where: { id: { not: projectId } } });
  expect(await open(there, ground.known)).toBe("let in");
  expect(await open(there, { ...ground.known, projectCode: other.code })).toBe("not there");
  expect(await open(ended, ground.known)).toBe("not there");
});
