import { err, ok, type Result } from "@/lib/kernel/result";

/** Tasks that wait for each other, in the order of their circle, or for one that is not there. */
export interface NetworkRefusal {
  readonly kind: "circle" | "missing";
  readonly ids: readonly string[];
}

interface Linked {
  readonly id: string;
  readonly after: readonly { readonly id: string }[];
}

/**
 * Puts tasks behind all they wait for, else in the order given.
 *
 * @returns Refused with the tasks of one circle, in its order, or with those named that are not there.
 */
export function inOrder<T extends Linked>(tasks: readonly T[]): Result<T[], NetworkRefusal> {
  const byId = new Map(tasks.map((task) => [task.id, task]));
  const missing = tasks.flatMap(({ after }) => after.filter(({ id }) => !byId.has(id)).map(({ id }) => id));
  if (missing.length > 0) return err({ kind: "missing", ids: [...new Set(missing)] });
  const waits = new Map(tasks.map(({ id, after }) => [id, after.length]));
  const followers = followersOf(tasks);
  const ordered: T[] = [];
  const ready = tasks.filter(({ after }) => after.length === 0);
  for (const task of ready) {
    ordered.push(task);
    for (const next of followers.get(task.id) ?? []) {
      const left = (waits.get(next.id) ?? 0) - 1;
      waits.set(next.id, left);
      if (left === 0) ready.push(next);
    }
  }
  if (ordered.length === tasks.length) return ok(ordered);
  return err({ kind: "circle", ids: circleAmong(tasks.filter(({ id }) => (waits.get(id) ?? 0) > 0)) });
}

/** The tasks that wait for each task. */
export function followersOf<T extends Linked>(tasks: readonly T[]): Map<string, T[]> {
  const followers = new Map<string, T[]>();
  for (const task of tasks)
    for (const { id } of task.after) followers.set(id, [...(followers.get(id) ?? []), task]);
  return followers;
}

/** Walks back along the links of tasks that all wait for one of their own, until one is met again. */
function circleAmong(stuck: readonly Linked[]): string[] {
  const byId = new Map(stuck.map((task) => [task.id, task]));
  const walked: string[] = [];
  let at = stuck[0];
  while (at && !walked.includes(at.id)) {
    walked.push(at.id);
    at = at.after.map(({ id }) => byId.get(id)).find((one) => one !== undefined);
  }
  // Walked against the links, so turned round it reads from forerunner to follower.
  return at ? walked.slice(walked.indexOf(at.id)).reverse() : walked;
}
