import "server-only";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { readPlanInputs } from "@/lib/data/planInputs";
import { loadTaskRows } from "@/lib/data/schedule/taskRows";
import { atSites } from "@/lib/data/scope";
import type { IsoDate } from "@/lib/kernel/isoDate";
import { figureAt, type PlanInputs } from "@/lib/view/planInputs";
import type { CalendarProject, CalendarSite, CalendarWindow } from "@/lib/view/projectCalendar";

interface ProjectCalendar {
  readonly sites: readonly CalendarSite[];
  readonly projects: readonly CalendarProject[];
}

/** Shutdowns, hands and open projects of the sites the person may see. */
export async function readProjectCalendar(actor: Actor, asOf: IsoDate): Promise<ProjectCalendar> {
  const [inputs, windows, projects] = await Promise.all([
    readPlanInputs(actor, asOf),
    database().shutdownWindow.findMany({
      where: atSites(actor, "read"),
      include: { line: { select: { code: true } } },
      orderBy: [{ startsOn: "asc" }, { name: "asc" }],
    }),
    database().project.findMany({
      where: { ...atSites(actor, "read"), status: { notIn: ["closed", "parked"] } },
      select: {
        ...{
          id: true,
          code: true,
          name: true,
          siteId: true,
          startsOn: true,
          line: { select: { code: true } },
        },
      },
      orderBy: { code: "asc" },
    }),
  ]);
  const tasks = await loadTaskRows(
    database(),
    projects.map(({ id }) => id),
  );
  const shutdowns = windows.map(({ id, siteId, name, line, usableHours, ...days }) => ({
    ...{ id, siteId, name, lineCode: line?.code ?? null, usableHours: usableHours?.toNumber() ?? null },
    ...{ startsOn: dayText(days.startsOn), endsOn: dayText(days.endsOn) },
  }));
  return {
    sites: inputs.sites.map((site) => siteOf(site, inputs, shutdowns)),
    projects: projects.map(({ id, startsOn, line, ...project }) => ({
      ...{ ...project, lineCode: line.code, startsOn: startsOn && dayText(startsOn) },
      tasks: tasks.get(id) ?? [],
      windows: shutdowns.filter(
        ({ siteId, lineCode }) => siteId === project.siteId && (lineCode === null || lineCode === line.code),
      ),
    })),
  };
}

function siteOf(
  { id, code, name, regionId }: PlanInputs["sites"][number],
  { regions, figures }: PlanInputs,
  windows: readonly (CalendarWindow & { readonly siteId: string })[],
): CalendarSite {
  const region = regions.find((one) => one.id === regionId);
  const weeks = figures.filter(
    ({ kind, siteId, year }) => kind === "engineer_weeks" && siteId === id && year !== null,
  );
  return {
    ...{ id, code, name },
    region: region
      ? {
          id: region.id,
          name: region.name,
          crews: figureAt(figures, { kind: "crews", regionId: region.id })?.value ?? null,
        }
      : null,
    engineerWeeks: Object.fromEntries(weeks.map(({ year, value }) => [String(year), value])),
    windows: windows.filter(({ siteId }) => siteId === id),
  };
}

const dayText = (date: Date): IsoDate => date.toISOString().slice(0, 10);
