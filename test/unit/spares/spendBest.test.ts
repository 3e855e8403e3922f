import { describe, expect, test } from "vitest";
import { type Offer, spendBest } from "@/lib/spares/spendBest";

/** An offer by its losses after 0, 1, 2 … pieces. */
function offer(id: string, unitCost: number, losses: readonly number[]): Offer & { worked: number } {
  const first = losses[0] ?? 0;
  const made = {
    ...{ id, unitCost, most: first, worked: 0 },
    loss: () => {
      made.worked += 1;
      return first;
    },
    next: (bought: readonly string[]) => {
      const loss = losses[bought.length + 1];
      return loss === undefined ? null : { shelf: "S", loss };
    },
  };
  return made;
}

describe("the next best piece for the money", () => {
  test("is taken again and again, with money and avoided loss summed up", () => {
    const list = spendBest([offer("A", 10, [100, 40, 20]), offer("B", 5, [50, 20, 15])], 25, 99);
    // 60/10 = 30/5: the first given wins; then 30/5, then 20/10.
    expect(list.map(({ id }) => id)).toEqual(["A", "B", "A"]);
    expect(list.at(-1)).toMatchObject({ spent: 25, avoided: 110, avoids: 20 });
  });

  test("passes over what is too dear for what is left", () => {
    expect(spendBest([offer("A", 10, [100, 0]), offer("B", 4, [8, 0])], 9, 99).map(({ id }) => id)).toEqual([
      "B",
    ]);
  });

  test("never works out an offer whose bound cannot win", () => {
    const hopeless = offer("B", 1, [10, 0]);
    const list = spendBest([offer("A", 1, [100, 50, 20]), hopeless], 2, 99);
    expect(list.map(({ id }) => id)).toEqual(["A", "A"]);
    expect(hopeless.worked).toBe(0);
  });

  test("sees one piece ahead only: two that help together come late (not exact, and said so)", () => {
    const together = offer("A", 1, [100, 99, 0]);
    const list = spendBest([together, offer("B", 1, [100, 95, 91])], 2, 99);
    expect(list.map(({ id }) => id)).toEqual(["B", "B"]);
    expect(list.at(-1)?.avoided).toBeLessThan(100);
  });

  test("ends at the longest list, and with nothing that helps", () => {
    expect(spendBest([offer("A", 1, [9, 8, 7, 6])], 99, 2)).toHaveLength(2);
    expect(spendBest([offer("A", 1, [9, 9])], 99, 9)).toEqual([]);
  });

  test("names what cannot be used", () => {
    expect(() => spendBest([offer("A", 0, [1])], 1, 9)).toThrow(/unitCost/);
    expect(() => spendBest([], -1, 9)).toThrow(/budget/);
  });
});
