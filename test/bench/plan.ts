import { readFileSync } from "node:fs";
import { availableParallelism, loadavg } from "node:os";
import type { PlanLineInput, PlanProblem } from "@/lib/portfolio/planProblem";
import { planEvaluator } from "@/lib/portfolio/planWorth";
import { type SolveTerms, solvePlan } from "@/lib/portfolio/solvePlan";
import { likelyAssumptions } from "@/lib/risk/assumptions";
import type { GroupInput } from "@/lib/risk/evaluation";
import { planOfGroup } from "@/test/support/planOfGroup";
import { type Measured, printTable } from "./table";

/** A group as one line of JSON: 40 lines of the demonstration. */
const file = process.argv[2];
if (!file) throw new Error("name a file that holds a group's input as JSON");
const demo = JSON.parse(readFileSync(file, "utf8")) as GroupInput;
const size = { firstYear: 2027, years: 3, budget: 900_000, horizonMonths: 60, reuse: true };

/** The group five times over, each copy with parts of its own at sites of its own. */
function fiveFold(input: GroupInput): GroupInput {
  const copies = [0, 1, 2, 3, 4];
  const named = (id: string, n: number) => (id.startsWith("unidentified:") ? id : `${id}/${n}`);
  return {
    ...input,
    lines: copies.flatMap((n) =>
      input.lines.map((line) => ({
        ...line,
        id: `${line.id}/${n}`,
        code: `${line.code}/${n}`,
        siteId: `${line.siteId}/${n}`,
      })),
    ),
    pools: copies.flatMap((n) =>
      input.pools
        .filter(({ id }) => n === 0 || !id.startsWith("unidentified:"))
        .map((pool) => ({
          ...pool,
          id: named(pool.id, n),
          stock: pool.stock.map((lot) => ({ ...lot, siteId: `${lot.siteId}/${n}` })),
        })),
    ),
    installed: copies.flatMap((n) =>
      input.installed.map((row) => ({ ...row, lineId: `${row.lineId}/${n}`, poolId: named(row.poolId, n) })),
    ),
    experience: copies.flatMap((n) =>
      input.experience.map((row) => ({ ...row, poolId: named(row.poolId, n), siteId: `${row.siteId}/${n}` })),
    ),
  };
}

/** Four options a line in each of twelve quarters, no shutdown asked for. */
function everyQuarter(problem: PlanProblem): PlanProblem {
  const free = ({ options, ...line }: PlanLineInput): PlanLineInput => ({
    ...line,
    options: options.map((option) => ({ ...option, windowHours: 0, projectWeeks: 0, orderWeeks: null })),
  });
  return {
    ...problem,
    lines: problem.lines.map(free),
    budgets: problem.budgets.filter(({ siteId }) => siteId === null),
  };
}

async function timed(group: Parameters<typeof solvePlan>[0], terms: SolveTerms) {
  const start = performance.now();
  const cpu = process.cpuUsage();
  const seconds = () => (performance.now() - start) / 1000;
  const found = await solvePlan(group, terms, { seconds, report: () => undefined });
  const { user, system } = process.cpuUsage(cpu);
  if (found.kind !== "plan") throw new Error(`a plan must be found, got ${found.kind}`);
  return { seconds: seconds(), processor: (user + system) / 1e6, plan: found.plan };
}

interface Asked {
  readonly name: string;
  readonly most: number;
  readonly gap: number;
}

function row({ name, most, gap }: Asked, run: Awaited<ReturnType<typeof timed>>): Measured {
  const { model, ended, worth, exchangeGain } = run.plan;
  return {
    name: `${name}: worth ${Math.round(worth.worth)}, exchange +${Math.round(exchangeGain)}, ${ended}`,
    value: `${run.seconds.toFixed(1)} s (${run.processor.toFixed(1)} s of processor)`,
    ...{ floor: "", ratio: `gap ${(100 * model.gap).toFixed(2)} %`, target: `${100 * gap} % in ${most} s` },
    met: run.seconds <= most && model.gap <= gap,
  };
}

/** One line moved in a plan of many, the group evaluated anew: the median and the slowest of twelve. */
function moves(): Measured {
  const problem = planOfGroup(demo, size);
  const evaluator = planEvaluator({ problem, input: demo, assumptions: likelyAssumptions });
  const full = evaluator.candidates.filter(
    ({ option, slot }) => option.id.endsWith("/full") && slot.quarter === 2,
  );
  const plan = full.map(({ index }) => index);
  evaluator.worth(plan);
  const times = full.slice(0, 12).map(({ index, option }) => {
    const later =
      evaluator.candidates.find((one) => one.option === option && one.slot.quarter === 6)?.index ?? index;
    const start = performance.now();
    evaluator.worth(plan.map((one) => (one === index ? later : one)).sort((a, b) => a - b));
    return performance.now() - start;
  });
  const sorted = times.sort((a, b) => a - b);
  const [median, slowest] = [sorted[6] ?? Number.NaN, sorted.at(-1) ?? Number.NaN];
  return {
    ...{ name: "moving one of 40 lines", value: `${median.toFixed(0)} ms, slowest ${slowest.toFixed(0)} ms` },
    ...{ floor: "", ratio: "", target: "under 300 ms", met: slowest < 300 },
  };
}

const before = loadavg()[0]?.toFixed(1);
const rows = [moves()];
const few = { problem: planOfGroup(demo, size), input: demo, assumptions: likelyAssumptions };
const plain = { name: "40 lines, 3 years, quarters", most: 20, gap: 0.005 };
rows.push(row(plain, await timed(few, { timeLimitSeconds: 60, companions: false })));
const large = fiveFold(demo);
const many = {
  problem: everyQuarter(planOfGroup(large, { ...size, budget: 4_500_000 })),
  ...{ input: large, assumptions: likelyAssumptions },
};
const wide = { name: "200 lines x 4 options x 12 quarters", most: 30, gap: 0.05 };
rows.push(row(wide, await timed(many, { timeLimitSeconds: 30, companions: false, gap: 0.05 })));
console.log(
  `Node ${process.version} · ${availableParallelism()} cores · load before ${before}, after ${loadavg()[0]?.toFixed(1)}`,
);
printTable(rows);
