import { addDays, addMonths, daysBetween, type IsoDate } from "@/lib/kernel/isoDate";
import { err, ok, type Result } from "@/lib/kernel/result";
import {
  type Activity,
  criticalPath,
  type NetworkTerms,
  type PlacedActivity,
} from "@/lib/projects/criticalPath";
import type { NetworkRefusal } from "@/lib/projects/taskOrder";
import { MONDAY_TO_FRIDAY, weekday } from "@/lib/projects/workCalendar";
import { count } from "@/lib/view/number";
import { day, dayRange } from "@/lib/view/time";

/** A task as kept. */
export interface ScheduleTask extends Activity {
  readonly code: string;
  readonly name: string;
  readonly who: string;
  readonly crews: number | null;
  readonly engineers: number | null;
  readonly plannedStart: IsoDate | null;
  readonly plannedFinish: IsoDate | null;
  readonly baselineStart: IsoDate | null;
  readonly baselineFinish: IsoDate | null;
  readonly milestoneId: string | null;
  readonly version: number;
}

export interface ScheduleWindow {
  readonly id: string;
  readonly name: string;
  readonly startsOn: IsoDate;
  readonly endsOn: IsoDate;
}

/** A plan that took the place of the one before it. */
export interface KeptReplan {
  readonly number: number;
  readonly madeOn: IsoDate;
  readonly madeBy: string;
  readonly reason: string;
  readonly before: readonly PlannedRow[];
  readonly after: readonly PlannedRow[];
}

/** A task as a plan had it. */
export interface PlannedRow {
  readonly code: string;
  readonly name: string;
  readonly days: number;
  readonly start: IsoDate | null;
  readonly finish: IsoDate | null;
}

export interface ScheduleGate {
  readonly id: string;
  readonly name: string;
  /** The task it guards. */
  readonly taskId: string | null;
  readonly decision: "open" | "passed" | "held";
  readonly decidedOn: IsoDate | null;
  readonly decidedBy: string | null;
  readonly reason: string;
  readonly version: number;
  readonly items: readonly {
    readonly id: string;
    readonly text: string;
    readonly who: string;
    readonly doneOn: IsoDate | null;
    readonly doneBy: string | null;
  }[];
}

/** The schedule of a project as kept. */
export interface ScheduleFile {
  readonly projectId: string;
  readonly code: string;
  readonly name: string;
  readonly siteId: string;
  readonly siteName: string;
  readonly lineCode: string;
  readonly startsOn: IsoDate | null;
  readonly endsOn: IsoDate | null;
  readonly tasks: readonly ScheduleTask[];
  readonly milestones: readonly {
    readonly id: string;
    readonly name: string;
    readonly dueOn: IsoDate | null;
    readonly doneOn: IsoDate | null;
  }[];
  /** Of the line and of its whole site, by first day. */
  readonly windows: readonly ScheduleWindow[];
  readonly gates: readonly ScheduleGate[];
  /** Newest first. */
  readonly replans: readonly KeptReplan[];
}

/** What somebody would change of a task; not kept yet. */
export interface TaskDraft {
  readonly days: number;
  readonly notBefore: IsoDate | null;
}

/** Changes by task id. */
export type ScheduleDraft = Readonly<Record<string, TaskDraft>>;

/** A task with its place as it now looks. */
export interface ScheduleRow {
  readonly task: ScheduleTask;
  readonly now: PlacedActivity;
  readonly isDraft: boolean;
}

export interface ScheduleView {
  readonly rows: readonly ScheduleRow[];
  /** Last day as it now looks, by the plan in force and by the baseline; null is none. */
  readonly finish: IsoDate | null;
  readonly plannedFinish: IsoDate | null;
  readonly baselineFinish: IsoDate | null;
}

/** On which terms the tasks of a project are placed on a day; without a start day it starts on that day. */
export function scheduleTerms(
  { startsOn, windows }: Pick<ScheduleFile, "startsOn" | "windows">,
  asOf: IsoDate,
): NetworkTerms {
  return { startsOn: startsOn ?? asOf, asOf, calendar: MONDAY_TO_FRIDAY, windows };
}

/** Places the tasks as they look on a day, with changes that are not kept yet. */
export function scheduleView(
  file: Pick<ScheduleFile, "startsOn" | "windows" | "tasks">,
  draft: ScheduleDraft,
  asOf: IsoDate,
): Result<ScheduleView, NetworkRefusal> {
  const tasks = file.tasks.map((task) => ({ ...seenBy(task, asOf), ...draft[task.id] }));
  const network = criticalPath(tasks, scheduleTerms(file, asOf));
  if (!network.ok) return network;
  const places = new Map(network.value.tasks.map((one) => [one.id, one]));
  const rows = tasks.flatMap((task): ScheduleRow[] => {
    const now = places.get(task.id);
    return now ? [{ task, now, isDraft: draft[task.id] !== undefined }] : [];
  });
  const last = (days: readonly (IsoDate | null)[]) =>
    days
      .filter((one) => one !== null)
      .sort()
      .at(-1) ?? null;
  return ok({
    rows,
    finish: network.value.finish,
    plannedFinish: last(tasks.map(({ plannedFinish }) => plannedFinish)),
    baselineFinish: last(tasks.map(({ baselineFinish }) => baselineFinish)),
  });
}

/** What happened later is not known on the day. */
function seenBy(task: ScheduleTask, asOf: IsoDate): ScheduleTask {
  const known = (on: IsoDate | null) => (on !== null && on <= asOf ? on : null);
  return { ...task, startedOn: known(task.startedOn), finishedOn: known(task.finishedOn) };
}

/** What is wrong with a schedule and what to do, in words; empty when nothing. */
export function scheduleClashes(file: ScheduleFile, view: ScheduleView): string[] {
  const clashes = view.rows
    .filter(({ now }) => now.outsideWindow)
    .map(({ task, now }) => windowWords(task, now));
  const late = file.milestones.flatMap(({ id, name, dueOn, doneOn }) => {
    const ends = view.rows.filter(({ task }) => task.milestoneId === id).map(({ now }) => now.finish);
    const end = ends.sort().at(-1);
    return doneOn === null && dueOn !== null && end !== undefined && end > dueOn
      ? [`Milestone ${name} is due ${day(dueOn)}; its tasks end ${day(end)}.`]
      : [];
  });
  return [...clashes, ...late];
}

/** Where a task lies that needs a shutdown and lies in none, and what to do. */
export function windowWords(
  { code, name, days }: ScheduleTask,
  { start, finish, windowStart }: PlacedActivity,
): string {
  const where = `${code} ${name} lies on ${dayRange(start, finish)}, in no shutdown on record.`;
  return windowStart === null
    ? `${where} None ahead is long enough for its ${count(days, "working day")}: record one, or split the task.`
    : `${where} It would fit from ${day(windowStart)}: move it there, or have production confirm its days and record them as a shutdown.`;
}

/** Why tasks cannot be placed, in words. */
export function refusalWords(
  { kind, ids }: NetworkRefusal,
  tasks: readonly Pick<ScheduleTask, "id" | "code">[],
): string {
  const names = ids.map((id) => tasks.find((task) => task.id === id)?.code ?? id);
  return kind === "circle"
    ? `These tasks wait for each other in a circle: ${[...names, names[0]].join(" → ")}. Take one of the links away.`
    : `A task waits for one that is not there: ${names.join(", ")}.`;
}

/** The links of a task as they are written: `W1, B2 + 3 d`. */
export function linkWords({ after }: Activity, tasks: readonly ScheduleTask[]): string {
  return after
    .map(({ id, lag }) => {
      const code = tasks.find((task) => task.id === id)?.code ?? "?";
      return lag === 0 ? code : `${code} + ${lag} d`;
    })
    .join(", ");
}

/** Reads links as written, `W1, B2 + 3`; refused with what cannot be read. */
export function readLinks(text: string, tasks: readonly ScheduleTask[]): Result<Activity["after"], string> {
  const parts = text
    .split(/[,;]/)
    .map((part) => part.trim())
    .filter((part) => part !== "");
  const links: { id: string; lag: number }[] = [];
  for (const part of parts) {
    const match = /^([A-Za-z0-9-]+)(?:\s*\+\s*(\d{1,4})\s*d?)?$/.exec(part);
    const task = match && tasks.find(({ code }) => code.toLowerCase() === match[1]?.toLowerCase());
    if (!task)
      return err(`“${part}” is no task here. Write codes with the days to wait, such as W1, B2 + 3.`);
    links.push({ id: task.id, lag: Number(match?.[2] ?? 0) });
  }
  return ok(links);
}

/** The working day a number of working days before or after another. */
export function shiftDay(from: IsoDate, by: number): IsoDate {
  let at = from;
  for (let left = Math.abs(by); left > 0; ) {
    at = addDays(at, Math.sign(by));
    if (MONDAY_TO_FRIDAY.weekdays.includes(weekday(at))) left -= 1;
  }
  return at;
}

/** Days the chart of a schedule shows, with the first day of each month in it. */
export interface ChartDays {
  readonly from: IsoDate;
  readonly days: number;
  readonly months: readonly IsoDate[];
}

/** The stretch of days that holds every bar and today. */
export function chartDays({ rows }: ScheduleView, asOf: IsoDate): ChartDays {
  const all = rows.flatMap(({ task, now }) =>
    [
      now.start,
      now.finish,
      task.plannedStart,
      task.plannedFinish,
      task.baselineStart,
      task.baselineFinish,
    ].filter((one) => one !== null),
  );
  const sorted = [asOf, ...all].sort();
  const from = `${(sorted[0] ?? asOf).slice(0, 7)}-01`;
  const months: IsoDate[] = [];
  for (let at = from; at <= (sorted.at(-1) ?? asOf); at = addMonths(at, 1)) months.push(at);
  const days = daysBetween(from, addMonths(months.at(-1) ?? from, 1));
  return { from, days, months };
}
