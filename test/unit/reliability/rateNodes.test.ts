import { expect, test } from "vitest";
import { rateNodes } from "@/lib/reliability/rateNodes";
import { demandTails } from "@/lib/spares/noSpareChance";

const MOST = 60;
const SHAPES = [0.3, 0.5, 1, 2, 4, 10, 40, 150, 600];
const MEANS = [0.01, 0.1, 0.5, 1, 3, 10, 20];

test.each(SHAPES)(
  "shape %d: the mean over the rates meets the negative binomial sum within a millionth",
  (a) => {
    const nodes = rateNodes({ a, b: a });
    expect(nodes.reduce((sum, { weight }) => sum + weight, 0)).toBeCloseTo(1, 12);
    for (const exposure of MEANS) {
      const exact = demandTails({ a, b: a, exposure }, MOST);
      const mean = new Array<number>(MOST + 1).fill(0);
      for (const { rate, weight } of nodes)
        for (const [k, tail] of demandTails({ rate, exposure }, MOST).entries())
          mean[k] = (mean[k] ?? 0) + weight * tail;
      const worst = Math.max(...mean.map((value, k) => Math.abs(value - (exact[k] ?? 0))));
      expect(worst).toBeLessThan(1e-6);
    }
  },
);

test("rates rise and are of the scale asked for", () => {
  const rates = rateNodes({ a: 4, b: 100 }).map(({ rate }) => rate);
  expect(rates).toEqual([...rates].sort((x, y) => x - y));
  const mean = rateNodes({ a: 4, b: 100 }).reduce((sum, { rate, weight }) => sum + rate * weight, 0);
  expect(mean).toBeCloseTo(0.04, 6);
});
