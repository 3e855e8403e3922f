import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { readClosedReview, readPurchaseList, readReviewBoard } from "@/lib/data/review";
import { addReviewAction, removeReviewAction, settleReviewAction } from "@/lib/data/reviewActionChange";
import { addReviewBuy, changeReviewBuy } from "@/lib/data/reviewBuyChange";
import { closeReview, dropReview, openReview, setReviewNote } from "@/lib/data/reviewChange";
import { makeActor } from "@/test/support/actors";
import { type FreshDatabase, freshDatabase } from "@/test/support/database";
import { asOf, makeTwoSites, type TwoSites } from "@/test/support/twoSites";

let fresh: FreshDatabase;
let places: TwoSites;
let planner: Actor;
let other: Actor;
let southern: Actor;
let partId: string;

beforeAll(async () => {
  fresh = await freshDatabase("review");
  places = await makeTwoSites();
  await database().setting.create({ data: { key: "asOf", value: asOf } });
  planner = await makeActor("planner", places.north);
  other = await makeActor("engineer", null);
  southern = await makeActor("planner", places.south);
  const part = await database().part.findFirstOrThrow({ where: { number: "BW-OK-020" } });
  partId = part.id;
  await database().part.update({
    where: { id: partId },
    data: { price: 1234.5, priceCurrency: "EUR", pricedOn: new Date("2026-05-02") },
  });
});
afterAll(() => fresh.close());

const board = async (actor = planner, siteCode: string | null = "NOR") => {
  const found = await readReviewBoard(actor, { siteCode, asOf });
  if (!found) throw new Error(`no board of ${siteCode}`);
  return found;
};
async function opened(): Promise<string> {
  const answer = await openReview(planner, { siteId: places.north });
  if (!answer.ok) throw new Error(answer.error.reason);
  return answer.value.reviewId;
}
const action = (more: Partial<Parameters<typeof addReviewAction>[1]> = {}) => ({
  ...{ siteId: places.north, text: "Count the shelf", partId: null, lineId: null },
  ...{ ownerId: planner.userId, dueOn: "2026-11-20" },
  ...more,
});

describe("the first review of a site", () => {
  test("compares with the records as known a week earlier, and says nothing got worse", async () => {
    const { figures, open, past, actions } = await board();
    expect(figures.base).toEqual({ kind: "records", asOf: "2026-11-23" });
    expect(figures.parts).toBe(1);
    expect(figures.worse).toEqual([]);
    expect([open, past, actions]).toEqual([null, [], []]);
  });

  test("is opened once by two at the same time, and can be taken back while it is empty", async () => {
    const site = { siteId: places.north };
    const answers = await Promise.all([openReview(planner, site), openReview(other, site)]);
    expect(answers.filter(({ ok }) => ok)).toHaveLength(1);
    expect(answers.find(({ ok }) => !ok)).toMatchObject({ error: { code: "conflict" } });
    const reviewId = (await board()).open?.id ?? "";
    expect(await dropReview(planner, { reviewId })).toMatchObject({ ok: true });
    expect((await board()).open).toBeNull();
  });
});

describe("an open review", () => {
  test("keeps what two write on one topic apart", async () => {
    const reviewId = await opened();
    const note = { reviewId, topic: "decisions", text: "Buy one", version: 0 } as const;
    expect(await setReviewNote(planner, note)).toEqual({ ok: true, value: { version: 1 } });
    expect(await setReviewNote(other, { ...note, text: "Buy two" })).toMatchObject({
      error: { code: "conflict" },
    });
    expect(await setReviewNote(other, { ...note, topic: "dates" })).toMatchObject({ ok: true });
    expect((await board()).notes.decisions).toEqual({ text: "Buy one", version: 1 });
    expect(await dropReview(planner, { reviewId })).toMatchObject({ error: { code: "impossible" } });
  });

  test("takes actions of people and things of the site alone", async () => {
    const refused = [
      await addReviewAction(planner, action({ ownerId: southern.userId })),
      await addReviewAction(planner, action({ lineId: places.lines["SUD-01"] ?? "" })),
      await addReviewAction(planner, action({ siteId: places.south })),
    ];
    expect(refused.map(({ ok }) => ok)).toEqual([false, false, false]);
    const added = await addReviewAction(planner, action({ lineId: places.lines["NOR-01"] ?? "" }));
    expect(added).toMatchObject({ ok: true });
    expect((await board()).actions).toMatchObject([
      { text: "Count the shelf", line: { code: "NOR-01" }, state: "open", raisedOn: asOf },
    ]);
  });

  test("settles an action for the first of two, and takes it back", async () => {
    const [stored] = (await board()).actions;
    const seen = { actionId: stored?.id ?? "", version: stored?.version ?? 0 };
    const done = await settleReviewAction(planner, { ...seen, state: "done", reason: null });
    expect(done).toMatchObject({ ok: true, value: { version: 2 } });
    const late = await settleReviewAction(other, { ...seen, state: "dropped", reason: "bought" });
    expect(late).toMatchObject({ error: { code: "conflict" } });
    expect((await board()).actions[0]).toMatchObject({ state: "done", settledOn: asOf });
    const back = { ...seen, version: 2, state: "open", reason: null } as const;
    expect(await settleReviewAction(planner, back)).toMatchObject({ ok: true });
    expect((await board()).actions[0]).toMatchObject({ state: "open", settledOn: null });
  });

  test("takes back an action that was just added", async () => {
    const added = await addReviewAction(planner, action({ text: "Wrong" }));
    if (!added.ok) throw new Error(added.error.reason);
    expect(await removeReviewAction(planner, added.value)).toMatchObject({ ok: true });
    expect((await board()).actions.map(({ text }) => text)).toEqual(["Count the shelf"]);
  });

  test("lists a part to buy once, with its price and its day", async () => {
    const reviewId = (await board()).open?.id ?? "";
    const wanted = { reviewId, partId, quantity: 2, reason: "=1+1" };
    const added = await addReviewBuy(planner, wanted);
    expect(added).toMatchObject({ ok: true });
    expect(await addReviewBuy(other, wanted)).toMatchObject({ error: { code: "conflict" } });
    const { buys } = await board();
    expect(buys).toMatchObject([
      {
        number: "BW-OK-020",
        quantity: 2,
        price: { amount: "1234.50", currency: "EUR", pricedOn: "2026-05-02" },
      },
    ]);
    const row = { buyId: buys[0]?.id ?? "", version: 1, quantity: 3, reason: "worn" };
    expect(await changeReviewBuy(planner, row)).toMatchObject({ ok: true });
    expect(await changeReviewBuy(other, row)).toMatchObject({ error: { code: "conflict" } });
  });
});

describe("a review that is closed", () => {
  let reviewId: string;
  let frozen: string;

  test("must be closed on the data the meeting looked at", async () => {
    const { open, dataVersion } = await board();
    reviewId = open?.id ?? "";
    await database().dataVersion.update({ where: { id: 1 }, data: { version: { increment: 1 } } });
    expect(await closeReview(planner, { reviewId, dataVersion })).toMatchObject({
      error: { code: "conflict" },
    });
    const now = await board();
    expect(await closeReview(planner, { reviewId, dataVersion: now.dataVersion })).toMatchObject({
      ok: true,
    });
    const shown = await readClosedReview(planner, reviewId);
    expect(shown?.record.figures).toEqual(now.figures);
    expect(shown?.record.buys).toMatchObject([{ quantity: 3, reason: "worn" }]);
    expect(shown?.record.notes.decisions.text).toBe("Buy one");
    frozen = JSON.stringify(shown);
  });

  test("takes nothing more", async () => {
    const note = { reviewId, topic: "decisions", text: "later", version: 1 } as const;
    const answers = [
      await setReviewNote(planner, note),
      await addReviewBuy(planner, { reviewId, partId, quantity: 1, reason: "late" }),
      await dropReview(planner, { reviewId }),
      await closeReview(planner, { reviewId, dataVersion: (await board()).dataVersion }),
    ];
    expect(answers.map((answer) => !answer.ok && answer.error.code)).toEqual(Array(4).fill("missing"));
  });

  test("stands as it was while the data move on; the next one compares with it and carries over", async () => {
    await database().stockLot.updateMany({ where: { bin: "R1" }, data: { state: "on_hold" } });
    await database().part.update({ where: { id: partId }, data: { price: 9_999 } });
    await database().dataVersion.update({ where: { id: 1 }, data: { version: { increment: 1 } } });
    expect(JSON.stringify(await readClosedReview(planner, reviewId))).toBe(frozen);
    const { figures, past, actions } = await board();
    expect(figures.base).toEqual({ kind: "review", asOf });
    expect(past.map(({ id }) => id)).toEqual([reviewId]);
    const [worst] = figures.worse;
    expect(worst).toMatchObject({ number: "BW-OK-020", main: "stock" });
    expect(worst?.noSpare.steps.stock).toBe(worst?.noSpare.change);
    expect(
      worst?.inputs.map(({ step, subject, before, after }) => [step, subject, before, after]),
    ).toContainEqual(["stock", "BW-OK-020 at other sites", "1", "0"]);
    expect(actions).toMatchObject([{ text: "Count the shelf", state: "open" }]);
  });
});

describe("somebody of another site", () => {
  test("finds neither the review nor anything in it", async () => {
    const [held] = (await board()).past;
    const id = held?.id ?? "";
    const [stored] = (await board()).actions;
    const seen = { actionId: stored?.id ?? "", version: stored?.version ?? 0 };
    expect(await readReviewBoard(southern, { siteCode: "NOR", asOf })).toBeNull();
    expect(await readClosedReview(southern, id)).toBeNull();
    expect(await readPurchaseList(southern, { reviewId: id, asOf })).toBeNull();
    expect(await settleReviewAction(southern, { ...seen, state: "done", reason: null })).toMatchObject({
      error: { code: "missing" },
    });
    expect(await openReview(southern, { siteId: places.north })).toMatchObject({
      error: { code: "missing" },
    });
    expect(JSON.stringify(await board(southern, null))).not.toMatch(/NOR/);
  });

  test("is not named in what a reader of all sites freezes", async () => {
    expect(JSON.stringify((await board(other)).figures)).not.toMatch(/SUD/);
  });
});
