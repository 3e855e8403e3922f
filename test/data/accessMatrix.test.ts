import { afterAll, beforeAll, expect, test, vi } from "vitest";
import { deskActions } from "@/test/support/access/deskActions";
import { type Ground, makeGround, OTHER, OWN, WORDS } from "@/test/support/access/ground";
import { TEST_SECRET } from "@/test/support/access/inRequest";
import { expected, makeVisitors, type Visitor } from "@/test/support/access/people";
import { pages } from "@/test/support/access/pages";
import { tryPage } from "@/test/support/access/tryPage";
import { holdWrites, openAction, tryAction } from "@/test/support/access/tryAction";
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

test.each(Object.entries(actions))("action %s", async (name, rule) => {
  const opened = await openAction(name, rule, ground.known);
  const [needs, of] = rule;
  const found = visitors.map(async (visitor) => [visitor.who, await tryAction(visitor, opened)]);
  const wanted = visitors.map((visitor) => [visitor.who, expected(visitor, needs, of)]);
  expect(await Promise.all(found)).toEqual(wanted);
});

/** What somebody must find on no page, by where they have a role. */
const strange = ({ place }: Visitor) =>
  [OWN, OTHER].filter((_, i) => place !== "all" && place !== (["own", "other"] as const)[i] && !(place === "project" && i === 0));

test.each(Object.entries(pages))("page %s", async (address, rule) => {
  const [needs, of] = rule;
  const found = visitors.map(async (visitor) => {
    const { verdict, words } = await tryPage(visitor.cookie, { address, rule, known: ground.known });
    const leaked = strange(visitor).flatMap((code) => WORDS[code]?.exec(words)?.[0] ?? []);
    return [visitor.who, verdict, ...leaked];
  });
  const wanted = visitors.map((visitor) => [visitor.who, expected(visitor, needs, of)]);
  expect(await Promise.all(found)).toEqual(wanted);
});
