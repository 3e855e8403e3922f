import { describe, expect, it } from "vitest";
import { evaluationDesk } from "@/lib/jobs/evaluationDesk";
import type { EvaluationAnswer } from "@/lib/jobs/evaluationThread";
import { likelyAssumptions } from "@/lib/risk/assumptions";
import type { GroupInput } from "@/lib/risk/evaluation";
import { tellStep, tellWhole } from "@/lib/risk/tellGroup";
import { smallGroup } from "@/test/support/smallGroup";

const input = smallGroup as GroupInput;
const [pool] = input.pools;
if (!pool) throw new Error("the small group has pools");
const emptied = { ...pool, stock: pool.stock.map((lot) => ({ ...lot, quantity: 0 })) };
const change = { changed: [emptied], others: [] };
const whole = { input, assumptions: likelyAssumptions };
const rowsOf = (answer: EvaluationAnswer) => ("rows" in answer ? answer.rows : answer.failed);

describe("the desk of the evaluation's thread", () => {
  it("answers what the computation beside it would", () => {
    const ask = evaluationDesk();
    const told = tellWhole(input, likelyAssumptions);
    expect(rowsOf(ask({ number: 1, ...whole }))).toEqual(told.rows);
    const stepped = rowsOf(ask({ number: 2, from: 1, change }));
    expect(stepped).toEqual(tellStep(told.group, change)?.rows);
    expect(stepped).not.toEqual(told.rows);
  });

  it("steps again from where a step began that was not kept, and from the step that was", () => {
    const ask = evaluationDesk();
    ask({ number: 1, ...whole });
    const first = rowsOf(ask({ number: 2, from: 1, change }));
    expect(rowsOf(ask({ number: 3, from: 1, change }))).toEqual(first);
    const back = { changed: [pool], others: [] };
    expect(rowsOf(ask({ number: 4, from: 3, change: back }))).not.toBeNull();
    expect(rowsOf(ask({ number: 5, from: 1, change }))).toBeNull();
  });

  it("is no ground for a pool it does not know", () => {
    const ask = evaluationDesk();
    ask({ number: 1, ...whole });
    const unknown = { changed: [{ ...pool, id: "another" }], others: [] };
    expect(rowsOf(ask({ number: 2, from: 1, change: unknown }))).toBeNull();
  });

  it("says why it failed, and goes on", () => {
    const ask = evaluationDesk();
    const broken = { ...input, installed: input.installed.map((row) => ({ ...row, units: -1 })) };
    expect(rowsOf(ask({ number: 1, input: broken, assumptions: likelyAssumptions }))).toMatch(/units/);
    expect(rowsOf(ask({ number: 2, ...whole }))).not.toBeNull();
  });
});
