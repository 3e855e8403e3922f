import { array, assert, double, integer, property, record, tuple } from "fast-check";
import { describe, expect, test } from "vitest";
import { ownOutcome } from "@/lib/spares/ownShelf";
import { type Offer, spendBest } from "@/lib/spares/spendBest";
import { stockChance } from "@/lib/spares/stockChance";
import { type Move, proposeTransfers, type TransferSite } from "@/lib/spares/transfers";

const between = (min: number, max: number) => double({ min, max, noNaN: true });
const EPS = 1e-9;

/** Losses that fall ever more slowly: the exact condition of the greedy list. */
const convexOffer = record({
  unitCost: integer({ min: 1, max: 4 }),
  falls: array(between(0.01, 50), { minLength: 1, maxLength: 4 }),
}).map(({ unitCost, falls }) => {
  const sorted = [...falls].sort((a, b) => b - a);
  const first = sorted.reduce((sum, fall) => sum + fall, 0);
  const losses = [first];
  for (const fall of sorted) losses.push((losses.at(-1) ?? 0) - fall);
  return { unitCost, losses };
});

function offersOf(specs: readonly { unitCost: number; losses: readonly number[] }[]): Offer[] {
  return specs.map(({ unitCost, losses }, i) => ({
    ...{ id: String(i), unitCost, most: losses[0] ?? 0, loss: () => losses[0] ?? 0 },
    next: (bought) => {
      const loss = losses[bought.length + 1];
      return loss === undefined ? null : { shelf: "S", loss };
    },
  }));
}

/** Most that can be avoided with a sum, by trying every set. */
function bestAvoided(
  specs: readonly { unitCost: number; losses: readonly number[] }[],
  budget: number,
): number {
  const [spec, ...rest] = specs;
  if (!spec) return 0;
  let best = 0;
  for (let n = 0; n < spec.losses.length && n * spec.unitCost <= budget; n += 1) {
    const avoided = (spec.losses[0] ?? 0) - (spec.losses[n] ?? 0);
    best = Math.max(best, avoided + bestAvoided(rest, budget - n * spec.unitCost));
  }
  return best;
}

describe("spending piece by piece", () => {
  const specs = array(convexOffer, { minLength: 1, maxLength: 3 });
  test("is the best of all sets at every sum it reaches, where losses fall ever more slowly", () => {
    assert(
      property(specs, (list) => {
        // Without a budget nothing is passed over.
        const bought = spendBest(offersOf(list), 1e6, 99);
        return bought.every(({ spent, avoided }) => avoided >= bestAvoided(list, spent) - EPS);
      }),
    );
  });
  test("avoids ever less for the money, and never spends more than there is", () => {
    assert(
      property(specs, integer({ min: 0, max: 30 }), (list, budget) => {
        const bought = spendBest(offersOf(list), budget, 99);
        const ratios = spendBest(offersOf(list), 1e6, 99).map(({ avoids, unitCost }) => avoids / unitCost);
        const falling = ratios.every((ratio, i) => i === 0 || ratio <= (ratios[i - 1] ?? 0) + EPS);
        return falling && (bought.at(-1)?.spent ?? 0) <= budget;
      }),
    );
  });
});

/** A site with so little removed at a time that P(X = k) falls in k: its loss is convex in its pieces. */
const convexSite = record({
  worth: between(0, 1000),
  exposure: between(0.1, 20),
  pieces: integer({ min: 0, max: 3 }),
});
const group = tuple(convexSite, convexSite, convexSite).map((specs) =>
  specs.map(({ worth, exposure, pieces }, i): TransferSite => {
    const goesTo = ["0", "1", "2"].filter((id) => id !== String(i));
    return {
      ...{ id: String(i), rate: { a: 2, b: 60 }, lots: [{ id: `l${i}`, count: pieces, works: 1, goesTo }] },
      moments: [0.5, 1].map((at) => ({
        exposure: exposure * at,
        weight: 0.5,
        worth: worth / 2,
        groupEmpty: 0.01,
      })),
    };
  }),
);

const shelf = (count: number) => stockChance([{ count, works: 1 }]);

/** Least total loss over all ways the pieces can lie, no site pushed below its own target by giving. */
function bestLoss(sites: readonly TransferSite[], target: number): number {
  const start = sites.map(({ lots }) => lots[0]?.count ?? 0);
  const total = start.reduce((sum, count) => sum + count, 0);
  const outcome = sites.map((site) =>
    Array.from({ length: total + 1 }, (_, k) => ownOutcome(site, shelf(k))),
  );
  const gives = (i: number, k: number) => k >= (start[i] ?? 0) || (outcome[i]?.[k]?.chance ?? 1) <= target;
  let best = Number.POSITIVE_INFINITY;
  for (let a = 0; a <= total; a += 1)
    for (let b = 0; a + b <= total; b += 1) {
      const counts = [a, b, total - a - b];
      if (!counts.every((k, i) => gives(i, k))) continue;
      best = Math.min(
        best,
        counts.reduce((sum, k, i) => sum + (outcome[i]?.[k]?.loss ?? 0), 0),
      );
    }
  return best;
}

function lossAfter(sites: readonly TransferSite[], moves: readonly Move[]): number {
  return sites.reduce((sum, site) => {
    const gone = moves.filter(({ fromId }) => fromId === site.id).length;
    const come = moves.filter(({ toId }) => toId === site.id).length;
    return sum + ownOutcome(site, shelf((site.lots[0]?.count ?? 0) - gone + come)).loss;
  }, 0);
}

describe("moving piece by piece", () => {
  test("ends at the least loss of all ways the pieces can lie, where each loss is convex", () => {
    assert(
      property(group, between(0.01, 0.6), (sites, target) => {
        const moves = proposeTransfers(sites, { target, least: 0 });
        const [reached, best] = [lossAfter(sites, moves), bestLoss(sites, target)];
        return Math.abs(reached - best) <= 1e-7 * Math.max(1, best);
      }),
    );
  });
  test("saves what the group loses less, to the cent, and never makes a giver pass its target", () => {
    assert(
      property(group, between(0.01, 0.6), (sites, target) => {
        const moves = proposeTransfers(sites, { target, least: 0 });
        const saved = moves.reduce((sum, { saves }) => sum + saves, 0);
        const fell = lossAfter(sites, []) - lossAfter(sites, moves);
        return Math.abs(saved - fell) < 0.005 && moves.every(({ from }) => from.after <= target);
      }),
    );
  });
  test("may stop short where a site has many removals under way (the case the page warns of)", () => {
    // With a mean of about five, the first piece helps next to nothing and the fifth much.
    const busy = (id: string, worth: number, count: number): TransferSite => ({
      ...{ id, rate: { a: 500, b: 100 }, lots: [{ id: `l${id}`, count, works: 1, goesTo: ["1"] }] },
      moments: [{ exposure: 1, weight: 1, worth, groupEmpty: 0 }],
    });
    const idle: TransferSite = {
      ...busy("0", 0, 8),
      moments: [{ exposure: 0, weight: 1, worth: 0, groupEmpty: 0 }],
    };
    const sites = [idle, busy("1", 1000, 0)];
    const stopped = proposeTransfers(sites, { target: 0.5, least: 50 });
    const all = proposeTransfers(sites, { target: 0.5, least: 0 });
    expect(stopped).toHaveLength(0);
    expect(all.reduce((sum, { saves }) => sum + saves, 0)).toBeGreaterThan(500);
  });
});
