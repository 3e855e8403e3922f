import { expect, test } from "vitest";
import { expectedBackorders } from "@/lib/spares/demand";
import { type Offer, spendBest } from "@/lib/spares/spendBest";

/** Expected backorders of a Poisson demand as the loss: the case the list is known for. */
function backorders(id: string, mean: number, unitCost: number): Offer {
  const after = (pieces: number) => expectedBackorders(mean, pieces);
  return {
    ...{ id, unitCost, most: after(0), loss: () => after(0) },
    next: (bought) => ({ shelf: "S", loss: after(bought.length + 1) }),
  };
}

test("two items by expected backorders (derived; the form of Sherbrooke, from memory): six B, then A, B, A, B", () => {
  const list = spendBest([backorders("A", 1, 5), backorders("B", 4, 1)], 18, 99);
  expect(list.map(({ id }) => id).join("")).toBe("BBBBBBABAB");
  const left = (spent: number) => 5 - (list.find((piece) => piece.spent === spent)?.avoided ?? Number.NaN);
  expect(Math.abs(left(11) - 0.5633)).toBeLessThan(5e-5);
  expect(Math.abs(left(18) - 0.1373)).toBeLessThan(5e-5);
});

test("one item of mean 4 falls as the printed expected backorders (Sherbrooke, chapter 2 style, from memory)", () => {
  const printed = [3.018, 2.11, 1.348, 0.782, 0.41, 0.195, 0.085, 0.034, 0.012];
  const list = spendBest([backorders("A", 4, 1)], printed.length, 99);
  for (const [i, value] of printed.entries())
    expect(Math.abs(4 - (list[i]?.avoided ?? Number.NaN) - value)).toBeLessThanOrEqual(0.00055);
});
