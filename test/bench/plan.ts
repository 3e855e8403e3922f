import { readFileSync } from "node:fs";
import { availableParallelism, loadavg } from "node:os";
import type { PlanLineInput, PlanProblem } from "@/lib/portfolio/planProblem";
import type { SolveProgress } from "@/lib/portfolio/planResult";
import { type PlanGroup, planEvaluator } from "@/lib/portfolio/planWorth";
import { type SolveTerms, solvePlan } from "@/lib/portfolio/solvePlan";
import { likelyAssumptions } from "@/lib/risk/assumptions";
import type { GroupInput } from "@/lib/risk/evaluation";
import { planOfGroup } from "@/test/support/planOfGroup";
import { type Measured, printTable } from "./table";

/** What `planInput.ts` wrote: 40 lines of the demonstration with the ways their scopes allow. */
const file = process.argv[2];
if (!file) throw new Error("name a file that planInput.ts wrote");
const own = JSON.parse(readFileSync(file, "utf8")) as PlanGroup;
const demo = own.input;
const size = { firstYear: 2027, years: 3, budget: 900_000, horizonMonths: 60, reuse: true };

const COPIES = 8;
const LINES = 200;

/** The group several times over, each copy with parts of its own at sites of its own. */
function manyFold(input: GroupInput): GroupInput {
  const copies = Array.from({ length: COPIES }, (_, n) => n);
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

/** 200 lines with four options each in each of twelve quarters, no shutdown asked for. */
function everyQuarter(problem: PlanProblem): PlanProblem {
  const free = ({ options, ...line }: PlanLineInput): PlanLineInput => ({
    ...line,
    options: options.map((option) => ({ ...option, windowHours: 0, projectWeeks: 0, orderWeeks: null })),
  });
  return {
    ...problem,
    lines: problem.lines
      .filter(({ options }) => options.length > 0)
      .slice(0, LINES)
      .map(free),
    budgets: problem.budgets.filter(({ siteId }) => siteId === null),
  };
}

async function timed(group: Parameters<typeof solvePlan>[0], terms: SolveTerms) {
  const start = performance.now();
  const cpu = process.cpuUsage();
  const seconds = () => (performance.now() - start) / 1000;
  const processor = () => {
    const { user, system } = process.cpuUsage(cpu);
    return (user + system) / 1e6;
  };
  let proven = Number.NaN;
  const report = ({ bound }: SolveProgress) => {
    if (bound !== null && Number.isNaN(proven)) proven = processor();
  };
  const found = await solvePlan(group, terms, { seconds, report });
  if (found.kind !== "plan") throw new Error(`a plan must be found, got ${found.kind}`);
  return { seconds: seconds(), processor: processor(), proven, plan: found.plan, group };
}

interface Asked {
  readonly name: string;
  readonly most: number;
  readonly gap: number;
}

function row({ name, most, gap }: Asked, run: Awaited<ReturnType<typeof timed>>): Measured {
  const { model, ended, worth, exchangeGain } = run.plan;
  const { lines, quarters } = run.group.problem;
  const ways = lines.reduce((sum, { options }) => sum + options.length, 0);
  return {
    name: `${name}, ${lines.length} lines, ${ways} ways, ${quarters.length} quarters: worth ${Math.round(worth.worth)}, exchange +${Math.round(exchangeGain)}, ${ended}`,
    value: `gap proven after ${run.proven.toFixed(1)} s of processor, done after ${run.processor.toFixed(1)} (${run.seconds.toFixed(1)} s by the clock)`,
    ...{ floor: "", ratio: `gap ${(100 * model.gap).toFixed(2)} %`, target: `${100 * gap} % in ${most} s` },
    met: run.proven <= most && model.gap <= gap,
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
    const start = process.cpuUsage();
    evaluator.worth(plan.map((one) => (one === index ? later : one)).sort((a, b) => a - b));
    const { user, system } = process.cpuUsage(start);
    return (user + system) / 1000;
  });
  const sorted = times.sort((a, b) => a - b);
  const [median, slowest] = [sorted[6] ?? Number.NaN, sorted.at(-1) ?? Number.NaN];
  return {
    name: "moving one of 40 lines, processor",
    value: `${median.toFixed(0)} ms, slowest ${slowest.toFixed(0)} ms`,
    ...{ floor: "", ratio: "", target: "under 300 ms", met: slowest < 300 },
  };
}

const before = loadavg()[0]?.toFixed(1);
const rows = [moves()];
const soon = { most: 20, gap: 0.005 };
const few: PlanGroup = {
  ...{ problem: planOfGroup(demo, size), input: demo, assumptions: likelyAssumptions },
};
for (const [name, group] of [
  ["as it is", own],
  ["plain ways", few],
] as const)
  rows.push(row({ name, ...soon }, await timed(group, { timeLimitSeconds: 60, companions: false })));
const large = manyFold(demo);
const many = {
  problem: everyQuarter(planOfGroup(large, { ...size, budget: 4_500_000 })),
  ...{ input: large, assumptions: likelyAssumptions },
};
const terms = { timeLimitSeconds: 90, companions: false, gap: 0.05 };
rows.push(row({ name: "large", most: 30, gap: 0.05 }, await timed(many, terms)));
console.log(
  `Node ${process.version} · ${availableParallelism()} cores · load before ${before}, after ${loadavg()[0]?.toFixed(1)}`,
);
printTable(rows);
