import type { Norm } from "@/lib/retrofit/costNorm";
import type { Task } from "@/lib/retrofit/scope/schedule";
import type { ScopeCounts } from "@/lib/retrofit/scope/scopeCounts";
import { personsAtWork, type ScopeNorms } from "@/lib/retrofit/scope/scopeNorms";
import { times } from "@/lib/retrofit/scope/spread";
import type { WindowWork } from "@/lib/retrofit/scope/windowFit";

/** Axes the days of a task by axes are given for. */
const AXES_OF_TEMPLATE = 12;
const DAYS_A_WEEK = 5;

type Measure = "axes" | "machines" | "once";
type Line = readonly [
  id: string,
  name: string,
  phase: Task["phase"],
  days: Norm,
  by: Measure,
  after: readonly string[],
];

/** Days of one crew for a machine of 12 axes; common practice, no source. */
const TEMPLATE: readonly Line[] = [
  ["P1", "Walk the running line and write down every axis as it is", "prepare", [2, 3, 5], "axes", []],
  [
    "P2",
    "Read every program out of its controller, keep it, prove that it compiles",
    "prepare",
    [0.5, 1, 3],
    "machines",
    ["P1"],
  ],
  [
    "P3",
    "Hold firmware, memory, cards and networks against the rules",
    "prepare",
    [1, 2, 4],
    "once",
    ["P1", "P2"],
  ],
  [
    "P4",
    "Give each axis its new drive; hand unmatched motors to a competent engineer",
    "prepare",
    [3, 5, 10],
    "axes",
    ["P1"],
  ],
  [
    "P5",
    "Have a named competent person decide: substantial change or not, safety levels needed",
    "prepare",
    [2, 3, 8],
    "once",
    ["P1"],
  ],
  ["P6", "Cost the options and have the money released", "prepare", [20, 35, 60], "once", ["P3", "P4", "P5"]],
  ["B1", "Draw circuits and write the lists of material", "build", [6, 10, 18], "axes", ["P6"]],
  ["B2", "Order what takes longest", "build", [1, 1, 2], "once", ["P6"]],
  ["B4", "Convert the programs and run them against a model", "build", [8, 15, 35], "machines", ["P6"]],
  ["B5", "Build plates and panels ahead", "build", [6, 10, 16], "axes", ["B1", "B2"]],
  [
    "B6",
    "Run controller, drives and two motors together on a bench",
    "build",
    [2, 4, 8],
    "once",
    ["B4", "B5"],
  ],
  [
    "B7",
    "Write the cutover hour by hour, with the last hour at which the old system can go back in",
    "build",
    [2, 3, 5],
    "once",
    ["B6"],
  ],
  ["B8", "Decide: go, or wait for the next window", "build", [0.5, 0.5, 1], "once", ["B7"]],
  [
    "B9",
    "Trace the old axes once more and take a last copy of everything",
    "build",
    [0.5, 0.5, 1],
    "once",
    ["B8"],
  ],
  ["A1", "Make product and compare rate and quality with before", "after", [0.5, 1, 3], "once", ["W5"]],
  ["A2", "Stand by and work off the list of defects", "after", [5, 10, 20], "once", ["A1"]],
  [
    "A3",
    "Test the removed units, book the good ones, put register, drawings and stock limits right",
    "after",
    [2, 3, 8],
    "axes",
    ["W1"],
  ],
  [
    "A4",
    "Close: hours against norms, a day for the check of the benefit",
    "after",
    [0.5, 1, 2],
    "once",
    ["A2", "A3"],
  ],
];

/** First task of the window, and the one that needs the parts on site. */
export const WINDOW_STARTS = "W1";
export const PARTS_NEEDED = "B5";

interface TaskTerms {
  readonly counts: ScopeCounts;
  readonly norms: ScopeNorms;
  readonly work: WindowWork;
  /** Weeks until the slowest part is here, typical and careful; null is not known. */
  readonly slowest: { readonly typical: number; readonly careful: number } | null;
}

/**
 * The tasks of a conversion with working days for its size.
 *
 * Days by axes are those of 12 axes × axes / 12, by machines × machines, shared among the crews, and never below
 * the template; the days in the window are its person-hours over the persons at work and the hours of a day.
 */
export function scopeTasks(terms: TaskTerms): Task[] {
  const { counts, norms, slowest } = terms;
  const sizes = { axes: counts.axes / AXES_OF_TEMPLATE, machines: counts.machines, once: 1 };
  const fixed = TEMPLATE.map(([id, name, phase, days, by, after]): Task => {
    const size = by === "once" ? 1 : Math.max(1, sizes[by] / norms.plain.crews);
    return { id, name, phase, days: times(days, size), after };
  });
  const tasks = [...fixed, ...windowTasks(terms)];
  if (slowest === null) return tasks;
  const { typical, careful } = slowest;
  const wait: Task = {
    ...{ id: "B3", name: "Wait for the part that takes longest", phase: "build", after: ["B2"] },
    days: [typical * DAYS_A_WEEK, typical * DAYS_A_WEEK, Math.max(typical, careful) * DAYS_A_WEEK],
  };
  return [
    ...tasks.map((task) => (task.id === PARTS_NEEDED ? { ...task, after: [...task.after, wait.id] } : task)),
    wait,
  ];
}

/** Shares of the hours on site: taking out and fitting one to two, checks and tuning one to one; a guess. */
function windowTasks({ norms, work }: TaskTerms): Task[] {
  const days = (hours: Norm, share: number) =>
    times(hours, share / (personsAtWork(norms) * norms.plain.hoursPerDay));
  const line = (id: string, name: string, given: Pick<Task, "days" | "after">): Task => ({
    ...{ id, name, phase: "window" },
    ...given,
  });
  const { install, commissioning, validation } = work;
  return [
    line(WINDOW_STARTS, "Lock out, take out, label and box what was removed", {
      days: days(install, 1 / 3),
      after: ["B9"],
    }),
    line("W2", "Fit, wire and test before power", { days: days(install, 2 / 3), after: ["W1"] }),
    line("W3", "Power up; prove network, direction, scaling, limits, homing", {
      days: days(commissioning, 1 / 2),
      after: ["W2"],
    }),
    line("W4", "Tune, then run dry from slow to full speed", {
      days: days(commissioning, 1 / 2),
      after: ["W3"],
    }),
    line("W5", "Validate every safety function with a second person", {
      days: days(validation, 1),
      after: ["W4"],
    }),
  ];
}
