import { describe, expect, it } from "vitest";
import { planEvaluator } from "@/lib/portfolio/planWorth";
import { likelyAssumptions } from "@/lib/risk/assumptions";
import { evaluate } from "@/lib/risk/evaluate";
import type { GroupInput, LeavingInput } from "@/lib/risk/evaluation";
import { fullOf, option, planGroup, planLine, planOf, smallPlan } from "@/test/support/smallPlan";

const at48 = { ...likelyAssumptions, months: 48, horizonMonths: 12, discountRate: 0.08 };
const horizon = (input: GroupInput) =>
  evaluate(input, at48).lines.reduce((sum, { horizonLoss }) => sum + (horizonLoss?.loss ?? 0), 0);

/** The group with leaves of one line written into it, as a project would. */
const leaving = (lineId: string, leave: LeavingInput): GroupInput => ({
  ...planGroup,
  installed: planGroup.installed.map((row) =>
    row.lineId === lineId && row.poolId === "oak" ? { ...row, leaves: [leave] } : row,
  ),
});

const index = (evaluator: ReturnType<typeof planEvaluator>, optionId: string, slotId: string) =>
  evaluator.candidates.findIndex(({ option: one, slot }) => one.id === optionId && slot.id === slotId);

/** A plan of one line's full retrofit with nothing of its own left behind. */
const bare = (fate: "kept" | "scrapped" | "unproven", works: number | null = null) =>
  planEvaluator(
    planOf({
      lines: [
        planLine("A", "VEL", [
          fullOf("A", {}, { residualShare: 0, removes: [{ poolId: "oak", units: 24, fate, works }] }),
        ]),
      ],
    }),
  );

describe("the worth of a plan", () => {
  it("of nothing is nothing, and the loss without a plan is the evaluation's to the last bit", () => {
    const { worth } = planEvaluator(planOf());
    expect(worth([])).toMatchObject({ worth: 0, spent: 0, lossWithout: horizon(planGroup) });
  });

  it.each([
    ["kept", true],
    ["scrapped", false],
  ] as const)("is the evaluation's own difference when units are %s", (fate, kept) => {
    const evaluator = bare(fate);
    const { worth } = evaluator.worth([index(evaluator, "A/full", "VEL 2027")]);
    const after = horizon(leaving("A", { on: "2027-08-15", units: 24, kept }));
    expect(worth).toBeCloseTo(horizon(planGroup) - after, 4);
    expect(worth).toBeGreaterThan(10_000);
  });

  it("orders kept above unproven and scrapped, and a better yield above a worse", () => {
    const worthOf = (fate: "kept" | "scrapped" | "unproven", works: number | null = null) => {
      const evaluator = bare(fate, works);
      return evaluator.worth([index(evaluator, "A/full", "VEL 2027")]).worth;
    };
    expect(worthOf("kept", 0.65)).toBe(worthOf("kept"));
    expect(worthOf("kept", 0.3)).toBeLessThan(worthOf("kept"));
    expect(worthOf("kept", 0.3)).toBeGreaterThan(worthOf("scrapped"));
    // Unproven pieces count for nothing by the group's assumption.
    expect(worthOf("unproven")).toBeCloseTo(worthOf("scrapped"), 6);
  });

  it("is never a sum: two lines that share a drive bring less together than each alone", () => {
    const evaluator = planEvaluator(planOf());
    const a = index(evaluator, "A/full", "VEL 2027");
    const c = index(evaluator, "C/full", "TAD 2027");
    const alone = evaluator.worth([a]).worth + evaluator.worth([c]).worth;
    const together = evaluator.worth([Math.min(a, c), Math.max(a, c)]).worth;
    expect(together).toBeLessThan(0.9 * alone);
    expect(together).toBeGreaterThan(evaluator.worth([a]).worth);
  });

  it("takes off what is put in, with its first months, hours of the work and yearly costs", () => {
    const worthOf = (more: object) => {
      const evaluator = planEvaluator(
        planOf({ lines: [planLine("A", "VEL", [fullOf("A", { oak: 24 }, { residualShare: 0, ...more })])] }),
      );
      return evaluator.worth([index(evaluator, "A/full", "VEL 2027")]);
    };
    const plain = worthOf({});
    const adds = [{ poolId: "heron", units: 24 }];
    const added = worthOf({ adds });
    const early = worthOf({ adds, earlyFailures: { months: 3, extraShare: 1 } });
    expect(plain.residual).toBe(0);
    expect(added.residual).toBeGreaterThan(0);
    // Three months of 40 or so, twice as often.
    expect(early.residual / added.residual).toBeGreaterThan(1.05);
    expect(early.residual / added.residual).toBeLessThan(1.12);
    const years = 258 / 365.25;
    expect(worthOf({ rampUpHours: 10, extraStopHours: 2 }).workLoss).toBeCloseTo(
      12 * 3400 * 1.08 ** -years,
      6,
    );
    const yearly = worthOf({ yearlyCost: 1200 }).yearlyCosts;
    // 48 months less 8.5, discounted by 8 %.
    expect(yearly).toBeGreaterThan(1200 * 2.6);
    expect(yearly).toBeLessThan(1200 * 3.3);
  });

  it("counts spares bought for the lines that use them", () => {
    const evaluator = planEvaluator(planOf());
    const bought = evaluator.worth([index(evaluator, "B/spares", "2027-Q1")]);
    expect(bought.worth).toBeGreaterThan(0);
    expect(bought.lines.filter((one) => one.with !== one.without).map(({ lineId }) => lineId)).toEqual(["B"]);
  });

  it("refuses a pool the group does not have, a day that is not the group's and options of one name", () => {
    const make = (problem: object) => () => planEvaluator(planOf(problem));
    expect(make({ lines: [planLine("A", "VEL", [fullOf("A", { elm: 1 })])] })).toThrow(RangeError);
    expect(make({ asOf: "2026-11-29" })).toThrow(RangeError);
    expect(make({ horizonMonths: 61 })).toThrow(RangeError);
    const twice = [option("x"), option("x")];
    expect(make({ lines: [planLine("A", "VEL", twice)] })).toThrow(RangeError);
    expect(make({ lines: [planLine("Z", "VEL", [])] })).toThrow(RangeError);
    expect(smallPlan.lines).toHaveLength(3);
  });
});
