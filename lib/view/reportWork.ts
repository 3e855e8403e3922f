import { projectFigures, projectStatusWords } from "@/lib/view/project";
import type { LateAction, ReportInput } from "@/lib/view/report";
import { decisionsAsked } from "@/lib/view/reportDecisions";
import type { ReportList, ReportTable } from "@/lib/view/reportDocument";
import { reportGapRows } from "@/lib/view/reportGapRows";
import { worstPools } from "@/lib/view/reportPools";
import { column, noteOf, pair, tableOf, words } from "@/lib/view/reportTable";

/** The pools whose empty shelf costs most. */
export function poolsTable(input: ReportInput, most: number): ReportTable {
  return tableOf({
    title: "Spares: the pools whose empty shelf costs most",
    href: "/spares",
    columns: [
      column("Part", "text", 3),
      column("Stage", "stage", 2.6),
      column("Units here", "number", 1.3),
      column("Usable / book here", "pair", 2),
      column("Usable elsewhere", "number", 1.7),
      column("No spare, next year", "share", 1.7),
      column("Shortage a year", "money", 1.9),
      column("Held share", "text", 1.9),
    ],
    rows: worstPools(input, most).map(({ part, units, shortage, held, ...stock }) => ({
      key: part.id,
      cells: [
        words(part.number, `/parts/${part.id}`),
        { kind: "stage", stage: part.pool.stage, href: `/parts/${part.id}` },
        { kind: "number", value: units, places: 0, href: `/parts/${part.id}` },
        pair([stock.usableHere, stock.bookHere], { share: false, places: 1, href: `/parts/${part.id}` }),
        { kind: "number", value: stock.usableElsewhere, places: 1, href: `/parts/${part.id}` },
        { kind: "share", value: part.pool.noSpare.mean, href: `/parts/${part.id}` },
        { kind: "money", value: shortage, href: `/parts/${part.id}` },
        words(held === null ? "none held" : `${held.siteCode} ${held.index.toFixed(1)}`, `/pool/${part.id}`),
      ],
    })),
    most,
    things: ["pool", "pools"],
    none: "No part is identified yet.",
    note: "No spare: chance that a failure finds no usable spare anywhere in the group, mean of the next twelve months. Held share: a site's share of the usable spares over its share of the units; 1 is even, above 1.5 it hoards.",
  });
}

/** The open projects, with what they earn for their money and time; the indices are also drawn as bars. */
export function projectsTable({ projects, asOf }: ReportInput, most: number): ReportTable {
  const open = projects.filter(({ status }) => status !== "closed");
  const seen = open.map((project) => ({ project, figures: projectFigures(project, asOf) }));
  const rows = seen.map(({ project, figures }) => {
    const href = `/projects/${project.code}`;
    const local = (value: number | null) =>
      ({ kind: "local", value, currency: project.currency, href }) as const;
    return {
      key: project.id,
      cells: [
        words(project.cause ? `${project.code}: ${project.cause}` : project.code, href),
        words(projectStatusWords(project.status), href),
        local(Number(figures.budget)),
        pair([figures.planned, figures.earned], { share: true, places: 0, none: "not defined", href }),
        local(Number(figures.actual)),
        pair([figures.control?.cpi ?? null, figures.control?.spi ?? null], {
          ...{ share: false, places: 2, none: "not defined", href },
        }),
        local(figures.control?.eac.trend ?? null),
        local(figures.eacSpan?.low ?? null),
        local(figures.eacSpan?.high ?? null),
      ],
    };
  });
  const table = tableOf({
    title: "Projects",
    href: "/projects",
    columns: [
      column("Project", "text", 4.6),
      column("State", "text", 2.2),
      column("Budget", "local", 1.9),
      column("Planned / earned", "pair", 2.2),
      column("Paid", "local", 1.9),
      column("Cost index / schedule index", "pair", 2.2),
      column("Cost at the end", "local", 1.9),
      column("Lowest forecast", "local", 1.9),
      column("Highest forecast", "local", 1.9),
    ],
    ...{ rows, most, things: ["project", "projects"], none: "No project is open." },
    note: "Cost at the end: by trend, and the lowest and highest of three forecasts.",
  });
  const shown = seen.slice(0, most);
  return {
    ...table,
    chart: {
      title: "Cost and schedule index; below 1 is worse than planned",
      unit: "Index",
      series: [
        { name: "Cost index", values: shown.map(({ figures }) => figures.control?.cpi ?? null) },
        { name: "Schedule index", values: shown.map(({ figures }) => figures.control?.spi ?? null) },
      ],
    },
  };
}

/** What should have been done: actions of reviews, and milestones of projects. */
export function lateTable(input: ReportInput, most: number): ReportTable {
  const late = [...input.lateActions, ...lateMilestones(input)].sort((a, b) =>
    a.dueOn === b.dueOn ? 0 : a.dueOn < b.dueOn ? -1 : 1,
  );
  return tableOf({
    title: "Actions late",
    href: "/review",
    columns: [
      column("Due on", "date", 2.4),
      column("Site", "text", 1.3),
      column("What", "text", 5),
      column("Owner", "text", 2.4),
    ],
    rows: late.map(({ text, siteCode, owner, dueOn, href }, place) => ({
      key: `${place}`,
      cells: [
        { kind: "date", on: dueOn, href },
        words(siteCode, href),
        words(text, href),
        words(owner, href),
      ],
    })),
    ...{ most, things: ["late action", "late actions"], none: "None is late.", half: true },
  });
}

function lateMilestones({ projects, asOf }: ReportInput): LateAction[] {
  return projects
    .filter(({ status }) => status !== "closed" && status !== "parked")
    .flatMap((project) => {
      const overdue = new Set(projectFigures(project, asOf).overdue);
      return project.milestones.flatMap(({ id, name, dueOn }) =>
        overdue.has(id) && dueOn !== null
          ? [
              {
                ...{ text: `${project.code}: ${name}`, siteCode: project.siteCode, dueOn },
                ...{ owner: "Project lead", href: `/projects/${project.code}` },
              },
            ]
          : [],
      );
    });
}

/** What nobody has recorded and the figures therefore assume. */
export function gapsTable(input: ReportInput): ReportTable {
  return tableOf({
    title: "Data gaps",
    href: "/assumptions",
    columns: [
      column("Gap", "text", 5),
      column("Missing", "number", 1.5),
      column("Of", "number", 1.3),
      column("Share", "share", 1.3),
    ],
    rows: reportGapRows(input).map(({ what, missing, of }) => ({
      key: what,
      cells: [
        words(what),
        { kind: "number", value: missing, places: 0 },
        { kind: "number", value: of, places: 0 },
        { kind: "share", value: of === 0 ? null : missing / of, none: "–" },
      ],
    })),
    ...{ most: 12, things: ["gap", "gaps"], none: "None.", half: true },
  });
}

/** What the reader is asked to decide. */
export function decisionsList(input: ReportInput, most: number): ReportList {
  const decisions = decisionsAsked(input);
  return {
    kind: "list",
    title: "Decisions asked for",
    items: decisions.slice(0, most),
    none: "None this month.",
    note: noteOf(decisions.length - most, ["decision", "decisions"]),
    half: false,
  };
}
