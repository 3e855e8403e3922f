import type { IsoDate } from "@/lib/kernel/isoDate";
import type { GroupInput, InstalledInput, PoolInput } from "@/lib/risk/evaluation";
import { MOVED_STEPS, type MovedStep, type SnapshotInput } from "@/lib/risk/moved/snapshotInput";
import { withLeaves } from "@/lib/risk/withLeaves";

/**
 * The way from one snapshot to the other: what is evaluated after each step, the last being the later one itself.
 *
 * A step puts the later value of its own group of inputs beside the earlier values of the groups still to come.
 * Corrections bring the later lines, counts and parts; a part the earlier snapshot did not know comes with its dates
 * and an empty shelf, one the later does not know is gone. Units out for repair move with the stock, units that leave
 * at a retrofit with the dates.
 * Before the clock moves, a notice or a source read between the two days is taken as of the earlier day, or it would
 * be overlooked as not yet known and its effect be counted under the clock.
 */
export function stepwise(before: SnapshotInput, after: SnapshotInput): readonly SnapshotInput[] {
  return MOVED_STEPS.map((step) => (step === "clock" ? after : upTo(step, before, after)));
}

function upTo(step: MovedStep, before: SnapshotInput, after: SnapshotInput): SnapshotInput {
  const reached = MOVED_STEPS.indexOf(step);
  const pick = (group: MovedStep) => (MOVED_STEPS.indexOf(group) <= reached ? after : before);
  const events = pick("events").input;
  const input: GroupInput = {
    asOf: pick("clock").input.asOf,
    lines: pick("corrections").input.lines,
    installed: installedOf(pick("corrections").input, pick("dates").input),
    pools: poolsOf({ before, after }, { stock: pick("stock") === after, dates: pick("dates") === after }),
    experience: events.experience,
    restorations: events.restorations,
  };
  return { input, assumptions: pick("assumptions").assumptions };
}

/** The units of one snapshot, leaving on the days of the other. */
function installedOf(units: GroupInput, plan: GroupInput): readonly InstalledInput[] {
  if (units === plan) return units.installed;
  const leaving = plan.installed.flatMap(({ lineId, poolId, leaves = [] }) =>
    leaves.map((leave) => ({ ...leave, lineId, poolId })),
  );
  return withLeaves(units.installed, leaving);
}

interface Pair {
  readonly before: SnapshotInput;
  readonly after: SnapshotInput;
}

function poolsOf(
  { before, after }: Pair,
  later: { readonly stock: boolean; readonly dates: boolean },
): PoolInput[] {
  const earlier = new Map(before.input.pools.map((pool) => [pool.id, pool]));
  const days = { from: before.input.asOf, to: after.input.asOf };
  return after.input.pools.map((pool) => {
    const was = earlier.get(pool.id);
    const supply = later.dates || was === undefined ? known(pool, days) : was;
    const shelf = later.stock ? pool : was;
    const { dates, leadYears, repair } = supply;
    return {
      ...{ ...pool, dates, leadYears, repair },
      ...{ stock: shelf?.stock ?? [], arrivals: shelf?.arrivals ?? [] },
    };
  });
}

interface Days {
  readonly from: IsoDate;
  readonly to: IsoDate;
}

function known(pool: PoolInput, days: Days): PoolInput {
  const { noticeOn, checkedOn } = pool.dates;
  return {
    ...pool,
    dates: { ...pool.dates, noticeOn: drawn(noticeOn, days), checkedOn: drawn(checkedOn, days) },
  };
}

/** A day between the two is moved to the earlier one. */
function drawn(date: IsoDate | null, { from, to }: Days): IsoDate | null {
  return date !== null && date > from && date <= to ? from : date;
}
