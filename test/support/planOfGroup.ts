import { addDays } from "@/lib/kernel/isoDate";
import { supplyStage } from "@/lib/lifecycle/supplyStage";
import type {
  PlanLineInput,
  PlanOption,
  PlanProblem,
  PlanQuarter,
  PlanWindow,
} from "@/lib/portfolio/planProblem";
import type { GroupInput, LineInput } from "@/lib/risk/evaluation";

/** Quarters of whole years from January of the first. */
export function quartersOf(firstYear: number, years: number): PlanQuarter[] {
  const ends = ["03-31", "06-30", "09-30", "12-31"];
  return Array.from({ length: years * 4 }, (_, i) => {
    const year = firstYear + Math.floor(i / 4);
    const number = (i % 4) + 1;
    const starts = `${year}-${String(number * 3 - 2).padStart(2, "0")}-01`;
    return { id: `${year}-Q${number}`, year, startsOn: starts, endsOn: `${year}-${ends[i % 4]}` };
  });
}

/** An option with nothing in it, to be filled. */
export const plainOption = (id: string): PlanOption => ({
  ...{ id, name: id, kind: "full", stage: 1, cost: { low: 0, typical: 0, high: 0 }, yearlyCost: 0 },
  ...{ windowHours: 0, extraStopHours: 0, rampUpHours: 0, engineerWeeks: [], crew: null },
  ...{ orderWeeks: null, projectWeeks: 0, removes: [], adds: [], buys: [], residualShare: 0 },
  ...{ earlyFailures: { months: 0, extraShare: 0 }, after: [], commitsTo: [] },
});

export interface PlanSize {
  readonly firstYear: number;
  readonly years: number;
  /** EUR a year. */
  readonly budget: number;
  readonly horizonMonths: number;
  readonly reuse: boolean;
}

const COST_PER_DRIVE = 5200;
const span = (typical: number) => ({ low: 0.8 * typical, typical, high: 1.3 * typical });

/** Drives of a line out of open supply, by pool. */
function oldDrives(input: GroupInput, { id }: LineInput) {
  const pools = new Map(input.pools.map((pool) => [pool.id, pool]));
  const units = new Map<string, number>();
  for (const { lineId, poolId, units: here } of input.installed) {
    const pool = pools.get(poolId);
    if (lineId !== id || pool?.itemClass !== "drive") continue;
    if (supplyStage(pool.dates, input.asOf) !== "open") units.set(poolId, (units.get(poolId) ?? 0) + here);
  }
  return [...units].map(([poolId, count]) => ({ poolId, units: count }));
}

/** Full, one third of it, controller first with the drives after it, and more spares. */
function optionsOf(input: GroupInput, line: LineInput, { reuse }: PlanSize): PlanOption[] {
  const drives = oldDrives(input, line);
  const count = drives.reduce((sum, { units }) => sum + units, 0);
  if (count === 0) return [];
  const fate = reuse ? ("kept" as const) : ("scrapped" as const);
  const removes = drives.map((one) => ({ ...one, fate, works: null }));
  const some = removes.map((one) => ({ ...one, units: Math.ceil(one.units / 3) }));
  const work = (name: string, share: number): PlanOption => ({
    ...plainOption(`${line.code}/${name}`),
    cost: {
      ...span(count * share * COST_PER_DRIVE + 40_000),
      phases: [
        { quartersBefore: 2, share: 0.3 },
        { quartersBefore: 0, share: 0.7 },
      ],
    },
    windowHours: 60 + 3 * count * share,
    rampUpHours: 12 * share,
    engineerWeeks: [{ region: line.siteId, weeks: 6 + 0.5 * count * share }],
    orderWeeks: 16,
    projectWeeks: 30,
    residualShare: 0.4,
    earlyFailures: { months: 3, extraShare: 0.5 },
  });
  const controller = `${line.code}/controller`;
  return [
    { ...work("full", 1), removes },
    { ...work("partial", 1 / 3), kind: "partial", removes: some },
    {
      ...plainOption(controller),
      ...{ kind: "controller", cost: span(60_000), windowHours: 40, projectWeeks: 12 },
    },
    { ...work("drives", 0.85), stage: 2, removes, after: [controller] },
  ];
}

function windowsOf(input: GroupInput, years: readonly number[]): PlanWindow[] {
  const sites = [...new Set(input.lines.map(({ siteId }) => siteId))];
  return sites.flatMap((siteId, i) =>
    years.flatMap((year) =>
      [addDays(`${year}-04-03`, i), addDays(`${year}-08-02`, i), `${year}-12-21`].map((startsOn, n) => ({
        ...{ id: `${siteId}/${year}/${n}`, name: `${year} ${n}`, siteId, lineId: null, startsOn },
        ...{ endsOn: addDays(startsOn, n === 1 ? 13 : 9), usableHours: n === 1 ? 336 : 200 },
      })),
    ),
  );
}

/** A plan over a group with options, windows and limits made from what it has installed. */
export function planOfGroup(input: GroupInput, size: PlanSize): PlanProblem {
  const { firstYear, years } = size;
  const quarters = quartersOf(firstYear, years);
  const list = Array.from({ length: years }, (_, i) => firstYear + i);
  const sites = [...new Set(input.lines.map(({ siteId }) => siteId))];
  const lines = input.lines.map(
    (line): PlanLineInput => ({
      ...{ lineId: line.id, code: line.code, siteId: line.siteId, mustDo: null },
      options: optionsOf(input, line, size),
    }),
  );
  return {
    ...{ asOf: input.asOf, lines, quarters, windows: windowsOf(input, list), windowFill: 0.8 },
    budgets: list.flatMap((year) => [
      { year, siteId: null, amount: size.budget },
      ...sites.map((siteId) => ({ year, siteId, amount: 0.45 * size.budget })),
    ]),
    ...{ reserveShare: 0.1, crews: [], pins: [], bans: [] },
    engineers: sites.flatMap((region) =>
      quarters.map(({ id: quarterId }) => ({ region, quarterId, weeks: 40 })),
    ),
    ...{ discountRate: 0.08, horizonMonths: size.horizonMonths, worthPerEuro: 0 },
  };
}
