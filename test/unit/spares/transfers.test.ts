import { describe, expect, test } from "vitest";
import { ownOutcome } from "@/lib/spares/ownShelf";
import { stockChance } from "@/lib/spares/stockChance";
import { proposeTransfers, type TransferSite } from "@/lib/spares/transfers";

interface Spec {
  readonly exposure: number;
  readonly lots?: TransferSite["lots"];
  readonly worth?: number;
}

/** Two ends of one year, alike in weight; EUR 1000 when the own shelf is always empty. */
function site(id: string, { exposure, lots = [], worth = 1000 }: Spec): TransferSite {
  const moment = (at: number) => ({ exposure: exposure * at, weight: 0.5, worth: worth / 2, groupEmpty: 0 });
  return { id, rate: { a: 4, b: 100 }, moments: [moment(0.5), moment(1)], lots };
}

const lot = (id: string, count: number, goesTo: readonly string[]) => ({ id, count, works: 1, goesTo });
const terms = { target: 0.05, least: 0 };

describe("moves between the shelves of a pool", () => {
  test("go from who has many to who has none, and say both chances before and after", () => {
    const giver = site("A", { exposure: 10, lots: [lot("a", 4, ["B"])] });
    const taker = site("B", { exposure: 10 });
    const moves = proposeTransfers([giver, taker], terms);
    expect(moves.map(({ fromId, toId }) => `${fromId}${toId}`)).toEqual(["AB", "AB"]);
    expect(moves[0]?.to.before).toBe(1);
    const one = ownOutcome(taker, stockChance([{ count: 1, works: 1 }]));
    expect(moves[0]?.to.after).toBe(one.chance);
    expect(moves[1]?.to.before).toBe(one.chance);
    expect(moves[0]?.saves).toBeGreaterThan(moves[1]?.saves ?? 0);
  });

  test("never take a giving site beyond its target", () => {
    const rich = (target: number) =>
      proposeTransfers(
        [
          site("A", { exposure: 10, lots: [lot("a", 4, ["B"])] }),
          site("B", { exposure: 10, worth: 100_000 }),
        ],
        {
          target,
          least: 0,
        },
      );
    for (const target of [0.001, 0.02, 0.3]) {
      const moves = rich(target);
      for (const { from } of moves) expect(from.after).toBeLessThanOrEqual(target);
    }
    expect(rich(0.3).length).toBeGreaterThan(rich(0.001).length);
  });

  test("leave a piece where it is when it may not run at the other site", () => {
    const shut = [site("A", { exposure: 0.1, lots: [lot("a", 4, [])] }), site("B", { exposure: 10 })];
    expect(proposeTransfers(shut, terms)).toEqual([]);
    const other = [
      site("A", { exposure: 0.1, lots: [lot("a", 4, ["C"])] }),
      site("B", { exposure: 50 }),
      site("C", { exposure: 1 }),
    ];
    expect(new Set(proposeTransfers(other, terms).map(({ toId }) => toId))).toEqual(new Set(["C"]));
  });

  test("end where a move saves less than the least asked for", () => {
    const sites = [site("A", { exposure: 0.1, lots: [lot("a", 4, ["B"])] }), site("B", { exposure: 10 })];
    const all = proposeTransfers(sites, terms);
    const worth = proposeTransfers(sites, { ...terms, least: 100 });
    expect(worth.length).toBeLessThan(all.length);
    for (const { saves } of worth) expect(saves).toBeGreaterThanOrEqual(100);
  });

  test("a site without units gives its last piece: nothing asks for it there", () => {
    const idle = { ...site("A", { exposure: 0, lots: [lot("a", 1, ["B"])] }), moments: [] };
    expect(proposeTransfers([idle, site("B", { exposure: 10 })], terms)).toHaveLength(1);
  });

  test("what no site has, no move brings", () => {
    const empty = (one: TransferSite): TransferSite => ({
      ...one,
      moments: one.moments.map((moment) => ({ ...moment, groupEmpty: 1 })),
    });
    expect(
      proposeTransfers(
        [empty(site("A", { exposure: 0.1, lots: [lot("a", 4, ["B"])] })), empty(site("B", { exposure: 10 }))],
        terms,
      ),
    ).toEqual([]);
  });

  test("names what cannot be used", () => {
    expect(() => proposeTransfers([], { target: 0, least: 0 })).toThrow(/target/);
    expect(() => proposeTransfers([], { target: 0.1, least: -1 })).toThrow(/least/);
    expect(() => proposeTransfers([site("A", { exposure: 1, lots: [lot("a", 0.5, [])] })], terms)).toThrow(
      /count/,
    );
  });
});
