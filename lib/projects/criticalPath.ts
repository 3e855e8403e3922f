import { addDays, type IsoDate } from "@/lib/kernel/isoDate";
import { requireCount } from "@/lib/kernel/requireNumber";
import { err, ok, type Result } from "@/lib/kernel/result";
import { inOrder, type NetworkRefusal } from "@/lib/projects/taskOrder";
import { type WindowDays, windowPlace } from "@/lib/projects/windowPlace";
import { type WorkCalendar, type WorkDays, workDays } from "@/lib/projects/workCalendar";

/** A task of a project. */
export interface Activity {
  readonly id: string;
  /** Working days it takes, whole, from 1. */
  readonly days: number;
  /** Tasks that must be finished before, and working days that must then pass, whole, from 0. */
  readonly after: readonly { readonly id: string; readonly lag: number }[];
  readonly notBefore: IsoDate | null;
  /** Can only be done in a shutdown window. */
  readonly inWindow: boolean;
  readonly startedOn: IsoDate | null;
  readonly finishedOn: IsoDate | null;
}

export interface NetworkTerms {
  /** No task begins before it. */
  readonly startsOn: IsoDate;
  /** What has not begun begins on this day at the earliest, what is not finished ends on it; null asks for neither. */
  readonly asOf: IsoDate | null;
  readonly calendar: WorkCalendar;
  readonly windows: readonly WindowDays[];
}

export interface PlacedActivity {
  readonly id: string;
  readonly start: IsoDate;
  readonly finish: IsoDate;
  /** Working days it can slip without moving the end, and without moving any other task; null is finished. */
  readonly totalFloat: number | null;
  readonly freeFloat: number | null;
  /** Not finished, and any slip of it moves the end. */
  readonly critical: boolean;
  /** It must lie in a window, is not finished, and lies in none. */
  readonly outsideWindow: boolean;
  /** When it is outside: the first day from its own on at which it would fit into a window; null is none on record. */
  readonly windowStart: IsoDate | null;
}

export interface Network {
  /** In the order given. */
  readonly tasks: readonly PlacedActivity[];
  /** Last day of the last task; null without tasks. */
  readonly finish: IsoDate | null;
}

/** Places in working days; the end is the first place after the task. */
interface Stretch {
  readonly start: number;
  readonly end: number;
}

/**
 * Places every task as early as its forerunners, its own earliest day and what really happened allow, and finds what
 * can slip (critical path method, textbook, from memory).
 *
 * start = latest of: start of the project, not before, today, end of each forerunner + lag; end = start + days.
 * A task that has begun starts when it did, and one that is finished ended when it did, whatever its links say.
 * Backward: latest end = earliest of (latest start of a follower − lag), of a last task the end of the project;
 * total float = latest end − end; free float = earliest (start of a follower − lag) − end. Links to followers that
 * have begun bind no more. A task in a window is not moved into one: it is told where it lies and where it would fit.
 *
 * @throws {RangeError} when days or a lag is not whole or too small, naming it.
 */
export function criticalPath(
  tasks: readonly Activity[],
  terms: NetworkTerms,
): Result<Network, NetworkRefusal> {
  for (const { id, days, after } of tasks) {
    requireCount(days - 1, `days of ${id} less one`);
    for (const { lag } of after) requireCount(lag, `lag of ${id}`);
  }
  const ordered = inOrder(tasks);
  if (!ordered.ok) return err(ordered.error);
  const days = workDays(terms.calendar, originOf(tasks, terms));
  const placed = forward(ordered.value, terms, days);
  const end = Math.max(0, ...[...placed.values()].map((one) => one.end));
  const floats = backward(ordered.value, placed, end);
  const found = tasks.map((task) => told(task, { placed, floats, days, windows: terms.windows }));
  const lastDays = found.map(({ finish }) => finish).sort();
  return ok({ tasks: found, finish: lastDays.at(-1) ?? null });
}

function originOf(tasks: readonly Activity[], { startsOn }: NetworkTerms): IsoDate {
  const days = [startsOn, ...tasks.flatMap(({ startedOn }) => startedOn ?? [])];
  return days.sort()[0] ?? startsOn;
}

function forward(ordered: readonly Activity[], terms: NetworkTerms, days: WorkDays): Map<string, Stretch> {
  const placed = new Map<string, Stretch>();
  const today = terms.asOf === null ? null : days.placeOf(terms.asOf);
  const first = Math.max(days.placeOf(terms.startsOn), today ?? 0);
  for (const task of ordered) {
    const freed = task.after.map(({ id, lag }) => (placed.get(id)?.end ?? 0) + lag);
    const notBefore = task.notBefore === null ? 0 : days.placeOf(task.notBefore);
    const start =
      task.startedOn === null ? Math.max(first, notBefore, ...freed) : days.placeOf(task.startedOn);
    const planned = Math.max(start + task.days, today === null ? 0 : today + 1);
    const end = task.finishedOn === null ? planned : days.placeOf(addDays(task.finishedOn, 1));
    placed.set(task.id, { start, end });
  }
  return placed;
}

interface Floats {
  readonly total: number;
  readonly free: number;
}

function backward(
  ordered: readonly Activity[],
  placed: ReadonlyMap<string, Stretch>,
  end: number,
): Map<string, Floats> {
  const latest = new Map<string, number>();
  const nearest = new Map<string, number>();
  const floats = new Map<string, Floats>();
  const lower = (map: Map<string, number>, id: string, to: number) =>
    map.set(id, Math.min(map.get(id) ?? end, to));
  for (const { id, after, startedOn } of [...ordered].reverse()) {
    const own = placed.get(id) ?? { start: 0, end: 0 };
    const latestEnd = latest.get(id) ?? end;
    floats.set(id, { total: latestEnd - own.end, free: (nearest.get(id) ?? end) - own.end });
    if (startedOn !== null) continue;
    for (const { id: before, lag } of after) {
      lower(latest, before, latestEnd - (own.end - own.start) - lag);
      lower(nearest, before, own.start - lag);
    }
  }
  return floats;
}

interface Found {
  readonly placed: ReadonlyMap<string, Stretch>;
  readonly floats: ReadonlyMap<string, Floats>;
  readonly days: WorkDays;
  readonly windows: readonly WindowDays[];
}

function told(task: Activity, { placed, floats, days, windows }: Found): PlacedActivity {
  const { start, end } = placed.get(task.id) ?? { start: 0, end: 1 };
  const { total, free } = floats.get(task.id) ?? { total: 0, free: 0 };
  const isOver = task.finishedOn !== null;
  const from = task.startedOn ?? days.dayAt(start);
  const until = task.finishedOn ?? days.dayAt(end - 1);
  const fit =
    task.inWindow && !isOver
      ? windowPlace({ start: from, finish: until }, windows, { days: task.days, work: days })
      : null;
  return {
    ...{ id: task.id, start: from, finish: until },
    totalFloat: isOver ? null : total,
    freeFloat: isOver ? null : free,
    critical: !isOver && total === 0,
    outsideWindow: fit?.lies === "outside",
    windowStart: fit?.lies === "outside" ? fit.nextStart : null,
  };
}
