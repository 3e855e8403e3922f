import { assert, property } from "fast-check";
import { describe, test } from "vitest";
import { likelyAssumptions } from "@/lib/risk/assumptions";
import { buyPool } from "@/lib/risk/buyOffer";
import { evaluateStaged, type StagedEvaluation } from "@/lib/risk/evaluate";
import type { GroupInput, PoolResult } from "@/lib/risk/evaluation";
import { groupByPool, poolSites } from "@/lib/risk/poolSites";
import { ownShelfOf } from "@/lib/risk/siteShelves";
import { ownOutcome } from "@/lib/spares/ownShelf";
import { stockChance } from "@/lib/spares/stockChance";
import { anyGroup } from "../support/anyGroup";

const runs = { numRuns: 25 };
const assumptions = { ...likelyAssumptions, months: 24 };

function laidOut(input: GroupInput) {
  const staged = evaluateStaged(input, assumptions);
  const from = groupByPool(input, staged.ground, staged.result.lines);
  const pools = [...staged.pools.values()].map(({ pool, result }) => ({ pool, ...result }));
  return { staged, from, pools };
}

type Pools = ReturnType<typeof laidOut>["pools"];

const lossOf = (pools: Pools, { from, staged }: Pick<ReturnType<typeof laidOut>, "from" | "staged">) =>
  pools.reduce((sum, seen) => sum + buyPool(seen, poolSites(seen, from), staged.ground).loss(), 0);

const evaluated = ({ result }: StagedEvaluation) =>
  result.lines.reduce((sum, { horizonLoss }) => sum + (horizonLoss?.loss ?? 0), 0);

const near = (a: number, b: number) => Math.abs(a - b) <= 1e-8 * Math.max(1, Math.abs(a), Math.abs(b));

/** The same group with all at one site. */
function atOneSite(input: GroupInput): GroupInput {
  return {
    ...input,
    lines: input.lines.map((line) => ({ ...line, siteId: "N" })),
    pools: input.pools.map((pool) => ({
      ...pool,
      stock: pool.stock.map((lot) => ({ ...lot, siteId: "N" })),
    })),
  };
}

describe("each site's own shelf beside the evaluation's one pool", () => {
  test("with a single site the loss of all months is the evaluation's", () => {
    assert(
      property(anyGroup, (input) => {
        const laid = laidOut(atOneSite(input));
        return near(lossOf(laid.pools, laid), evaluated(laid.staged));
      }),
      runs,
    );
  });
  test("with two sites it is never less: a shelf that runs empty sends for a spare", () => {
    assert(
      property(anyGroup, (input) => {
        const laid = laidOut(input);
        const [own, one] = [lossOf(laid.pools, laid), evaluated(laid.staged)];
        return own >= one - 1e-8 * Math.max(1, one);
      }),
      runs,
    );
  });
  test("nothing bought, the chance that no site has one is the evaluation's", () => {
    assert(
      property(anyGroup, (input) => {
        const { pools, from, staged } = laidOut(input);
        const mean = ({ noSpareByMonth }: PoolResult) =>
          noSpareByMonth.reduce((sum, span) => sum + span.mean, 0) / noSpareByMonth.length;
        return pools.every((seen) =>
          near(buyPool(seen, poolSites(seen, from), staged.ground).noSpare([]), mean(seen)),
        );
      }),
      runs,
    );
  });
  test("a piece more never raises the loss, and none avoids more than the bound", () => {
    assert(
      property(anyGroup, (input) => {
        const { pools, from, staged } = laidOut(input);
        return pools.every((seen) => {
          const buy = buyPool(seen, poolSites(seen, from), staged.ground);
          const first = buy.next([]);
          const avoids = first === null ? 0 : buy.loss() - first.loss;
          return avoids >= -1e-6 && avoids <= buy.most + 1e-6;
        });
      }),
      runs,
    );
  });
  test("an empty own shelf is empty for sure, and costs no less than the group's", () => {
    assert(
      property(anyGroup, (input) => {
        const { pools, from } = laidOut(input);
        return pools.every((seen) =>
          poolSites(seen, from).every((site) => {
            const shelf = ownShelfOf(site, seen, { noSpareByMonth: seen.noSpareByMonth, months: 12 });
            const { chance } = ownOutcome(shelf, stockChance([]));
            return site.units === 0 ? chance === 0 : near(chance, 1);
          }),
        );
      }),
      runs,
    );
  });
});
