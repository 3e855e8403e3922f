import { expect, it } from "vitest";
import { simulatedRow } from "@/lib/view/partSimulation";

const month = { months: 12, runs: 10_000, model: 0.2, simulated: 0.205 };

it("agrees within three standard errors, and says by how much it is off beyond", () => {
  // sqrt(0.2 × 0.8 ÷ 10 000) = 0.004.
  expect(simulatedRow(month)).toMatchObject({
    ahead: "12 months",
    error: "±\u202f0.8 points",
    verdict: "agrees",
  });
  expect(simulatedRow({ ...month, simulated: 0.2121 }).verdict).toBe("off by 1.2 points");
});

it("leaves a certain chance the one run it may miss", () => {
  expect(simulatedRow({ ...month, model: 0, simulated: 0.0001 }).verdict).toBe("agrees");
});
