import type { Task } from "@/lib/retrofit/scope/schedule";
import type { ScopeCounts } from "@/lib/retrofit/scope/scopeCounts";
import { likelyScopeNorms, type ScopeNorms } from "@/lib/retrofit/scope/scopeNorms";
import { scopeTasks } from "@/lib/retrofit/scope/scopeTasks";
import { NOTHING } from "@/lib/retrofit/scope/spread";
import { windowWork } from "@/lib/retrofit/scope/windowFit";

/** A task a project starts with. */
export interface UsualTask {
  readonly code: string;
  readonly name: string;
  /** Whole working days. */
  readonly days: number;
  readonly inWindow: boolean;
  /** Codes of the tasks it waits for. */
  readonly after: readonly string[];
  /** Place of the usual milestone it serves, from 1; null serves none. */
  readonly milestone: number | null;
  /** Crews and engineers at work at the same time; null is not known. */
  readonly crews: number | null;
  readonly engineers: number | null;
}

/** Costing and release: over once a project starts from a funded line. */
const OVER: readonly string[] = ["P6"];

const PHASES: readonly Task["phase"][] = ["prepare", "build", "window", "after"];

const MILESTONES: Readonly<Record<string, number>> = {
  ...{ P1: 1, P2: 2, P3: 2, P4: 2, P5: 2, B1: 2, B2: 3, B3: 3, B4: 4, B6: 4 },
  ...{ W1: 5, W2: 5, W3: 6, W4: 7, W5: 8, A1: 9, A2: 9, A3: 9, A4: 9 },
};

/** Engineers of the site at the line during the shutdown; common practice, no source. */
const ENGINEERS_IN_WINDOW = 1;

/** One machine of twelve axes, where the scope of the line is not known. */
const TEMPLATE_COUNTS: ScopeCounts = {
  ...{ axes: 12, machines: 1, panels: 0 },
  ...{ swapped: NOTHING, raised: NOTHING, adapters: NOTHING, motors: NOTHING, racks: NOTHING },
};

/** The tasks of the template, for a line whose scope is not known. */
export function templateTasks(norms: ScopeNorms = likelyScopeNorms): Task[] {
  const work = windowWork(TEMPLATE_COUNTS, norms);
  return scopeTasks({ counts: TEMPLATE_COUNTS, norms, work, slowest: null });
}

/**
 * The tasks a project starts with, by phase: those of the scope with their typical days, parts of days rounded up.
 *
 * A task that is over already is left out, and what waited for it waits for what it waited for.
 */
export function usualTasks(tasks: readonly Task[], { plain }: ScopeNorms = likelyScopeNorms): UsualTask[] {
  const over = new Map(tasks.filter(({ id }) => OVER.includes(id)).map(({ id, after }) => [id, after]));
  return tasks
    .filter(({ id }) => !over.has(id))
    .sort((a, b) => PHASES.indexOf(a.phase) - PHASES.indexOf(b.phase) || (a.id < b.id ? -1 : 1))
    .map(({ id, name, phase, days, after }) => ({
      ...{ code: id, name, days: Math.max(1, Math.ceil(days[1])), inWindow: phase === "window" },
      after: [...new Set(after.flatMap((before) => over.get(before) ?? [before]))],
      milestone: MILESTONES[id] ?? null,
      crews: phase === "window" ? plain.crews : null,
      engineers: phase === "window" ? ENGINEERS_IN_WINDOW : null,
    }));
}
