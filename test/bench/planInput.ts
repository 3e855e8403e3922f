import { writeFileSync } from "node:fs";
import { keptGround } from "@/lib/data/planning/keptGround";
import type { PlanGroup } from "@/lib/portfolio/planWorth";
import { personWith } from "@/test/support/twoSites";

/** Writes what a plan of all lines of the database is made from into a file, for `plan.ts`. */
const [file, asOf = "2026-11-30"] = process.argv.slice(2);
if (!file) throw new Error("name the file to write, and the day if it is not that of the demonstration");

const { ground, evaluator } = await keptGround(personWith("admin", null), {
  ...{ asOf, deed: "plan:write", lineIds: null },
});
const { input, evaluation } = ground;
const group: PlanGroup = { problem: evaluator.problem, input, assumptions: evaluation.assumptions };
writeFileSync(file, JSON.stringify(group));
process.exit(0);
