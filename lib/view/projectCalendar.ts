import { addMonths, daysBetween, type IsoDate } from "@/lib/kernel/isoDate";
import { type HandNeed, overloads } from "@/lib/projects/overloads";
import { MONDAY_TO_FRIDAY, workDays } from "@/lib/projects/workCalendar";
import { count, plainNumber } from "@/lib/view/number";
import { type ScheduleFile, type ScheduleRow, scheduleView, windowWords } from "@/lib/view/schedule";
import { day, dayRange } from "@/lib/view/time";

/** A site with its shutdowns and what is on record of hands; null is not stated. */
export interface CalendarSite {
  readonly id: string;
  readonly code: string;
  readonly name: string;
  readonly region: { readonly id: string; readonly name: string; readonly crews: number | null } | null;
  /** Engineer-weeks for projects, by year. */
  readonly engineerWeeks: Readonly<Record<string, number>>;
  readonly windows: readonly CalendarWindow[];
}

export interface CalendarWindow {
  readonly id: string;
  readonly name: string;
  readonly lineCode: string | null;
  readonly startsOn: IsoDate;
  readonly endsOn: IsoDate;
  readonly usableHours: number | null;
}

export type CalendarProject = Pick<
  ScheduleFile,
  "code" | "name" | "siteId" | "startsOn" | "windows" | "tasks" | "lineCode"
>;

/** A project with its tasks that need a shutdown, as they now look. */
export interface CalendarRow {
  readonly code: string;
  readonly name: string;
  readonly tasks: readonly ScheduleRow[];
}

export interface CalendarSiteView extends CalendarSite {
  readonly rows: readonly CalendarRow[];
  /** What is wrong and what to do, in words. */
  readonly clashes: readonly string[];
}

export interface CalendarView {
  readonly from: IsoDate;
  readonly days: number;
  readonly months: readonly IsoDate[];
  readonly sites: readonly CalendarSiteView[];
  /** Crews asked for by several sites of a region at once. */
  readonly crewClashes: readonly string[];
}

const MONTHS_AHEAD = 18;

interface Given {
  readonly sites: readonly CalendarSite[];
  readonly projects: readonly CalendarProject[];
}

/** Shutdowns of each site for the months ahead against the work of projects that needs them. */
export function calendarView({ sites, projects }: Given, asOf: IsoDate): CalendarView {
  const from = `${asOf.slice(0, 7)}-01`;
  const months = Array.from({ length: MONTHS_AHEAD }, (_, i) => addMonths(from, i));
  const until = addMonths(from, MONTHS_AHEAD);
  const placed = projects.map((project) => ({ project, rows: openRows(project, asOf) }));
  const views = sites.map((site): CalendarSiteView => {
    const own = placed.filter(({ project }) => project.siteId === site.id);
    const rows = own.map(({ project: { code, name }, rows: all }) => ({
      ...{ code, name, tasks: all.filter(({ task }) => task.inWindow) },
    }));
    return {
      ...site,
      windows: site.windows.filter(({ startsOn, endsOn }) => endsOn >= asOf && startsOn < until),
      rows: rows.filter(({ tasks }) => tasks.length > 0),
      clashes: [...outside(rows), ...engineersShort(site, own)],
    };
  });
  return {
    ...{ from, months, days: daysBetween(from, until) },
    sites: views.filter(({ windows, rows, clashes }) => windows.length + rows.length + clashes.length > 0),
    crewClashes: crewsShort(sites, placed),
  };
}

interface PlacedProject {
  readonly project: CalendarProject;
  readonly rows: readonly ScheduleRow[];
}

/** The tasks that are not finished, placed; none where they cannot be. */
function openRows(project: CalendarProject, asOf: IsoDate): readonly ScheduleRow[] {
  const view = scheduleView(project, {}, asOf);
  return view.ok ? view.value.rows.filter(({ task }) => task.finishedOn === null) : [];
}

function outside(rows: readonly CalendarRow[]): string[] {
  return rows.flatMap(({ code, tasks }) =>
    tasks.filter(({ now }) => now.outsideWindow).map(({ task, now }) => `${code}: ${windowWords(task, now)}`),
  );
}

/** Years in which the projects of a site need more engineer-weeks than are stated; a task counts in the year it begins. */
function engineersShort(site: CalendarSite, own: readonly PlacedProject[]): string[] {
  const needed = new Map<string, number>();
  for (const { rows } of own)
    for (const { task, now } of rows) {
      const year = now.start.slice(0, 4);
      const work = workDays(MONDAY_TO_FRIDAY, now.start);
      const days = work.placeOf(now.finish) + 1;
      needed.set(year, (needed.get(year) ?? 0) + ((task.engineers ?? 0) * days) / 5);
    }
  return [...needed].flatMap(([year, weeks]) => {
    const stated = site.engineerWeeks[year];
    return stated !== undefined && weeks > stated
      ? [
          `${year}: projects at ${site.code} need ${plainNumber(weeks, 1)} engineer-weeks, ${plainNumber(stated, 1)} are stated. Move a project, or have more hands stated in the planning figures.`,
        ]
      : [];
  });
}

/** Days on which projects of a region need more crews than are stated. */
function crewsShort(sites: readonly CalendarSite[], placed: readonly PlacedProject[]): string[] {
  const regions = new Map(sites.flatMap(({ region }) => (region ? [[region.id, region] as const] : [])));
  const regionOf = new Map(sites.map(({ id, region }) => [id, region?.id]));
  return [...regions.values()].flatMap(({ id, name, crews }) => {
    if (crews === null) return [];
    const needs = placed
      .filter(({ project }) => regionOf.get(project.siteId) === id)
      .flatMap(({ project, rows }) =>
        rows.map(
          ({ task, now }): HandNeed => ({
            ...{
              project: project.code,
              task: task.code,
              start: now.start,
              finish: now.finish,
              hands: task.crews ?? 0,
            },
          }),
        ),
      );
    return overloads(needs, crews).map(({ from, to, needed, needs: at }) => {
      const who = at.map(({ project, task }) => `${project} ${task}`).join(", ");
      return `${dayRange(from, to)}: ${who} need ${count(needed, "crew")} of ${name} together, ${count(crews, "crew")} ${crews === 1 ? "is" : "are"} stated. Move one of them within its shutdown or to the next, or find a crew from elsewhere.`;
    });
  });
}

/** A shutdown in words: `Summer shutdown 2027, 2–20 Aug 2027, 140 usable hours`. */
export function shutdownWords({ name, lineCode, startsOn, endsOn, usableHours }: CalendarWindow): string {
  const hours = usableHours === null ? "usable hours not known" : `${plainNumber(usableHours)} usable hours`;
  return `${name}${lineCode === null ? "" : `, ${lineCode} only`}, ${startsOn === endsOn ? day(startsOn) : dayRange(startsOn, endsOn)}, ${hours}`;
}
