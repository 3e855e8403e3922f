import { type SumRow, solveMixed } from "@/lib/portfolio/mixedModel";
import { type LimitRow, slackOf } from "@/lib/portfolio/planLimits";
import type { BrokenLimit, LimitName, PlanConflict } from "@/lib/portfolio/planResult";

const SECONDS = 20;
/** Limits by nature: no money and no crew change that one option of a line and stage is enough. */
const FIXED = new Set<LimitName["kind"]>(["one-per-stage", "after", "commits-to"]);
/** Never relaxed: safety and legal dates. */
const SACRED = new Set<LimitName["kind"]>(["must-do"]);
/** What a person decided gives way only after what there is too little of. */
const DECIDED = new Set<LimitName["kind"]>(["pin", "ban"]);
const DECIDED_WEIGHT = 1000;

const NONE = { least: Number.NEGATIVE_INFINITY };

const isLink = ({ limit }: LimitRow) => limit.kind === "after" || limit.kind === "commits-to";

/** Only lines with a promise, and what those need, can make a plan impossible: the rest may stay undone. */
function concerned(limits: readonly LimitRow[]): Set<number> {
  const out = new Set(limits.filter(({ most }) => most < 0).flatMap(({ takes }) => [...takes.keys()]));
  const links = limits.filter(isLink);
  const needed = () =>
    links
      .filter(({ takes }) => [...takes].some(([index, amount]) => amount > 0 && out.has(index)))
      .flatMap(({ takes }) => [...takes.keys()])
      .filter((index) => !out.has(index));
  for (let more = needed(); more.length > 0; more = needed()) for (const index of more) out.add(index);
  return out;
}

/** A model without an aim over the candidates concerned; null when the solver has no answer in time. */
async function canKeep(limits: readonly LimitRow[], asked: readonly number[]): Promise<boolean> {
  const place = new Map(asked.map((index, i) => [index, i]));
  const rows = limits.map(
    ({ takes, most }): SumRow => ({ ...NONE, takes: within(takes, place), most: most + slackOf(most) }),
  );
  if (rows.some(({ takes, most }) => takes.length === 0 && most < 0)) return false;
  const columns = asked.map(() => ({ gain: 0, least: 0, most: 1, whole: true }));
  if (columns.length === 0) return true;
  const { status } = await solveMixed({ columns, rows }, { gap: 0, timeLimitSeconds: SECONDS });
  return status !== "infeasible";
}

const within = (takes: LimitRow["takes"], place: ReadonlyMap<number, number>) =>
  [...takes].flatMap(([index, amount]): [number, number][] => {
    const column = place.get(index);
    return column === undefined ? [] : [[column, amount]];
  });

/** What a limit is measured against: itself, or its largest taker where there is none. */
function scaleOf({ most, takes }: LimitRow): number {
  return Math.abs(most) > 0 ? Math.abs(most) : Math.max(1, ...[...takes.values()].map(Math.abs));
}

/** Takes limits away one by one as long as the rest cannot be kept: what stays is a clash, any one of them less would do. */
async function clashOf(limits: readonly LimitRow[], asked: readonly number[]): Promise<LimitRow[]> {
  const fixed = limits.filter(({ limit }) => FIXED.has(limit.kind));
  let kept = limits.filter(({ limit }) => !FIXED.has(limit.kind));
  // Halves first, so that few questions do: most limits have no part in it.
  for (let size = Math.ceil(kept.length / 2); size >= 1; size = size === 1 ? 0 : Math.ceil(size / 2))
    for (let from = 0; from < kept.length; ) {
      const without = [...kept.slice(0, from), ...kept.slice(from + size)];
      if (await canKeep([...fixed, ...without], asked)) from += size;
      else kept = without;
    }
  return kept;
}

/** The least that would do: each limit may give, at a price by its own size; null when even that does not help. */
async function leastRelaxation(
  limits: readonly LimitRow[],
  asked: readonly number[],
): Promise<BrokenLimit[] | null> {
  const place = new Map(asked.map((index, i) => [index, i]));
  const gives = limits.filter(({ limit }) => !FIXED.has(limit.kind) && !SACRED.has(limit.kind));
  const slack = new Map(gives.map((row, i) => [row, asked.length + i]));
  const columns = [
    ...asked.map(() => ({ gain: 0, least: 0, most: 1, whole: true })),
    ...gives.map(({ limit }) => ({
      ...{ gain: DECIDED.has(limit.kind) ? -DECIDED_WEIGHT : -1, least: 0, most: Number.POSITIVE_INFINITY },
      whole: DECIDED.has(limit.kind),
    })),
  ];
  const rows = limits.map((row): SumRow => {
    const column = slack.get(row);
    const takes = within(row.takes, place);
    const most = row.most + slackOf(row.most) / 2;
    return { ...NONE, takes: column === undefined ? takes : [...takes, [column, -scaleOf(row)]], most };
  });
  if (rows.some(({ takes, most }) => takes.length === 0 && most < 0)) return null;
  const { status, values } = await solveMixed({ columns, rows }, { gap: 0, timeLimitSeconds: SECONDS });
  if (status === "infeasible" || status === "none-found") return null;
  return gives.flatMap((row): BrokenLimit[] => {
    const by = (values[slack.get(row) as number] as number) * scaleOf(row);
    if (by <= slackOf(row.most)) return [];
    const { limit, unit, most } = row;
    return [{ limit, unit, most, used: most + by, by }];
  });
}

/** Why no plan keeps within the limits: a set that cannot be kept together, and the least relaxation that would do. */
export async function planConflict(limits: readonly LimitRow[]): Promise<PlanConflict> {
  const inside = concerned(limits);
  const asked = [...inside].sort((a, b) => a - b);
  const touching = limits.filter(
    ({ takes, most }) => most < 0 || [...takes.keys()].some((index) => inside.has(index)),
  );
  const clash = await clashOf(touching, asked);
  return { clash: clash.map(({ limit }) => limit), relax: await leastRelaxation(touching, asked) };
}
