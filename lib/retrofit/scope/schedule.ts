import { err, ok, type Result } from "@/lib/kernel/result";
import type { Norm } from "@/lib/retrofit/costNorm";

/** A piece of work with what has to be done before it. */
export interface Task {
  readonly id: string;
  readonly name: string;
  readonly phase: "prepare" | "build" | "window" | "after";
  /** Working days. */
  readonly days: Norm;
  readonly after: readonly string[];
}

/** A task on the time scale of typical days, from 0. */
export interface PlacedTask extends Task {
  readonly start: number;
  readonly end: number;
  /** Days it can slip without moving the end. */
  readonly slack: number;
  readonly critical: boolean;
}

export interface Schedule {
  readonly tasks: readonly PlacedTask[];
  /** Longest way, at low, typical and high days. */
  readonly total: Norm;
  readonly criticalPath: readonly string[];
}

/** Tasks that wait for each other, or for one that is not there. */
export interface ScheduleRefusal {
  readonly ids: readonly string[];
}

const SMALL = 1e-9;

/**
 * Places every task as early as what comes before it allows, and finds the longest way through (critical path
 * method, textbook, from memory).
 *
 * @returns The schedule, or the tasks that cannot begin because they wait in a circle or for a missing one.
 */
export function schedule(tasks: readonly Task[]): Result<Schedule, ScheduleRefusal> {
  const ordered = inOrder(tasks);
  if (!ordered.ok) return ordered;
  const ends = [0, 1, 2].map((at) => endsAt(ordered.value, at as 0 | 1 | 2));
  const [low = new Map(), typical = new Map(), high = new Map()] = ends;
  const total: Norm = [last(low), last(typical), last(high)];
  const latest = latestEnds(ordered.value, total[1]);
  const placed = ordered.value.map((task): PlacedTask => {
    const end = typical.get(task.id) ?? 0;
    const slack = Math.max(0, (latest.get(task.id) ?? total[1]) - end);
    return { ...task, start: end - task.days[1], end, slack, critical: slack < SMALL };
  });
  return ok({ tasks: placed, total, criticalPath: criticalPath(placed) });
}

function inOrder(tasks: readonly Task[]): Result<Task[], ScheduleRefusal> {
  const done = new Set<string>();
  const ordered: Task[] = [];
  let open = [...tasks];
  while (open.length > 0) {
    const ready = open.filter(({ after }) => after.every((id) => done.has(id)));
    if (ready.length === 0) return err({ ids: open.map(({ id }) => id) });
    for (const task of ready) done.add(task.id);
    ordered.push(...ready);
    open = open.filter(({ id }) => !done.has(id));
  }
  return ok(ordered);
}

function endsAt(ordered: readonly Task[], at: 0 | 1 | 2): Map<string, number> {
  const ends = new Map<string, number>();
  for (const { id, days, after } of ordered)
    ends.set(id, days[at] + Math.max(0, ...after.map((before) => ends.get(before) ?? 0)));
  return ends;
}

function latestEnds(ordered: readonly Task[], total: number): Map<string, number> {
  const latest = new Map(ordered.map(({ id }) => [id, total]));
  for (const { id, days, after } of [...ordered].reverse())
    for (const before of after)
      latest.set(before, Math.min(latest.get(before) ?? total, (latest.get(id) ?? total) - days[1]));
  return latest;
}

function criticalPath(placed: readonly PlacedTask[]): string[] {
  const byId = new Map(placed.map((task) => [task.id, task]));
  const path: string[] = [];
  let at = [...placed].sort((a, b) => b.end - a.end)[0];
  while (at) {
    path.unshift(at.id);
    const { start, after } = at;
    at = after
      .map((id) => byId.get(id))
      .find((one): one is PlacedTask => one !== undefined && Math.abs(one.end - start) < SMALL);
  }
  return path;
}

const last = (ends: ReadonlyMap<string, number>) => Math.max(0, ...ends.values());

/** Longest way from the start of one task to the start of another, typical working days; null when none leads there. */
export function daysBetweenStarts(tasks: readonly Task[], from: string, to: string): number | null {
  if (from === to) return 0;
  const task = tasks.find(({ id }) => id === from);
  if (!task) return null;
  const ways = tasks
    .filter(({ after }) => after.includes(from))
    .flatMap(({ id }) => daysBetweenStarts(tasks, id, to) ?? []);
  return ways.length === 0 ? null : task.days[1] + Math.max(...ways);
}
