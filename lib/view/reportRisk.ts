import { percent } from "@/lib/view/chance";
import { money } from "@/lib/view/format";
import { count, plainNumber } from "@/lib/view/number";
import { obligationWords } from "@/lib/view/obligation";
import { firstLines, type ReportInput, reportLoss, stageCounts } from "@/lib/view/report";
import { dueDates } from "@/lib/view/reportDates";
import type { ReportHeadline, ReportTable } from "@/lib/view/reportDocument";
import { lineNeed } from "@/lib/view/reportNeeds";
import { column, tableOf, words } from "@/lib/view/reportTable";
import { stageOrder } from "@/lib/view/stage";

/** What stops cost in a year, with its range and what it is made of. */
export function reportHeadline(input: ReportInput): ReportHeadline {
  const { total, isDrawn, shortage, lines, costed, stopsPerYear } = reportLoss(input);
  const missing = lines - costed;
  const range = isDrawn ? "in nine of ten draws" : "with every line at one end at once";
  const share =
    shortage !== null && total !== null && total.mean > 0
      ? `${percent(shortage / total.mean)} of it, ${money(shortage)}, because a failure finds no usable spare. `
      : "";
  const unknown =
    missing > 0
      ? `; on ${count(missing, "line")} the cost per hour is not known, and these are not in the money`
      : "";
  return {
    loss: total,
    shortage,
    words: total ? range : "",
    sentences: [
      `${share}${plainNumber(stopsPerYear)} stops a year are expected on ${count(lines, "line")}${unknown}.`,
    ],
    href: "/lines",
  };
}

/** The lines that lose most, with what each needs; also drawn as bars. */
export function linesTable(input: ReportInput): ReportTable {
  const first = firstLines(input, 5);
  const rows = first.map(({ line, loss, drivers }) => ({
    key: line.code,
    cells: [
      words(`${line.code} ${line.name}`, `/lines/${line.code}`),
      { kind: "money", value: loss.mean, href: `/lines/${line.code}` } as const,
      { kind: "span", span: loss, href: `/lines/${line.code}` } as const,
      words(
        drivers.map(({ label, share }) => `${label} ${percent(Math.min(1, share))}`).join(", "),
        `/lines/${line.code}`,
      ),
      emptyFrom(line.result.depletionP80, input.asOf, `/lines/${line.code}`),
      needCell(lineNeed(input, line)),
    ],
  }));
  const table = tableOf({
    title: "The five lines that lose most",
    href: "/lines",
    columns: [
      column("Line", "text", 5),
      column("Stop loss a year", "money", 2),
      column("Range (5–95 %)", "span", 4),
      column("Driven by", "text", 4),
      column("Shelf likely empty from", "date", 2.6),
      column("What it needs", "text", 4.8),
    ],
    rows,
    most: 5,
    things: ["line", "lines"],
    none: "No line has a cost per hour yet.",
  });
  return {
    ...table,
    chart: {
      title: "Stop loss a year with its range",
      unit: "EUR a year",
      series: [
        { name: "Low (5 %)", values: first.map(({ loss }) => loss.low) },
        { name: "Expected", values: first.map(({ loss }) => loss.mean) },
        { name: "High (95 %)", values: first.map(({ loss }) => loss.high) },
      ],
    },
  };
}

const needCell = ({ text, href }: ReturnType<typeof lineNeed>) => words(text, href);

/** First day the shelf of a part of the line is empty with a chance of four fifths. */
function emptyFrom(on: string | null, asOf: string, href: string) {
  const none = on === null ? "not within 5 years" : "already";
  return { kind: "date", on: on !== null && on > asOf ? on : null, none, href } as const;
}

/** Safety and legal dates of the next 24 months, beside the money and never weighed against it. */
export function bindingTable({ obligations, asOf }: ReportInput, most: number): ReportTable {
  return tableOf({
    title: "Safety and legal dates within 24 months",
    href: "/dates",
    columns: [
      column("Due on", "date", 2.6),
      column("Of", "text", 2),
      column("Kind", "text", 1.8),
      column("What must be done", "text", 8),
      column("Owner", "text", 3),
    ],
    rows: obligations.map(({ id, kind, title, dueOn, line, siteCode, owner }) => ({
      key: id,
      cells: [
        { kind: "date", on: dueOn, ...(dueOn < asOf ? { mark: "overdue" } : {}) },
        words(line?.code ?? `${siteCode}, whole site`, line ? `/lines/${line.code}#binding` : "/dates"),
        words(obligationWords(kind).name),
        words(title),
        words(owner ?? "nobody"),
      ],
    })),
    most,
    things: ["later date", "later dates"],
    none: "None is recorded.",
    note: "They bind whatever a line loses and stand in no figure here; a named competent person decides.",
  });
}

/** What is due within six months. */
export function datesTable(input: ReportInput, most: number): ReportTable {
  return tableOf({
    title: "Due within six months",
    href: "/dates",
    columns: [
      column("Day", "date", 3),
      column("What", "text", 3.6),
      column("Of", "text", 3),
      column("Units here", "number", 1.6),
    ],
    rows: dueDates(input).map(({ on, what, of, units, passed }) => ({
      key: `${on}${what}${of}`,
      cells: [
        { kind: "date", on, ...(passed ? { mark: "passed" } : {}) },
        words(what),
        words(of),
        { kind: "number", value: units, places: 0 },
      ],
    })),
    most,
    things: ["later date", "later dates"],
    none: "Nothing with a sourced date. Undated parts may still end unannounced.",
    half: true,
  });
}

/** How the supply of what is installed stands; also drawn as bars. */
export function stagesTable(input: ReportInput): ReportTable {
  const order = (stage: (typeof counts)[number]["stage"]) =>
    stage === "unidentified" ? -1 : stageOrder(stage);
  const counts = stageCounts(input);
  counts.sort((a, b) => order(a.stage) - order(b.stage));
  const units = counts.reduce((sum, one) => sum + one.units, 0);
  const table = tableOf({
    title: "How supply stands",
    href: "/parts",
    columns: [
      column("Supply stage", "stage", 4),
      column("Parts", "number", 1.4),
      column("Units", "number", 1.4),
      column("Share", "share", 1.4),
    ],
    rows: counts.map(({ stage, parts, units: here }) => ({
      key: stage,
      cells: [
        { kind: "stage", stage: stage === "unidentified" ? null : stage },
        { kind: "number", value: stage === "unidentified" ? null : parts, places: 0 },
        { kind: "number", value: here, places: 0 },
        { kind: "share", value: here / units },
      ],
    })),
    most: counts.length,
    things: ["stage", "stages"],
    none: "Nothing is installed.",
    half: true,
  });
  return {
    ...table,
    chart: {
      title: "Installed units by supply stage",
      unit: "Units",
      series: [{ name: "Units", values: counts.map(({ units: here }) => here) }],
    },
  };
}

/** The sites of a group side by side; the losses of sites do not add up at their ends, only in the middle. */
export function sitesTable(input: ReportInput): ReportTable {
  const sites = input.sites.map(({ id, code, name }) => {
    const lines = input.lines.filter(({ siteId }) => siteId === id);
    const loss = reportLoss({ lines, drawnTotal: input.drawnSites[code] ?? null });
    const late = input.lateActions.filter(({ siteCode }) => siteCode === code).length;
    const open = input.projects.filter(({ siteCode, status }) => siteCode === code && status !== "closed");
    return { code, name, loss, late, open: open.length };
  });
  const number = (value: number, href?: string) =>
    ({ kind: "number", value, places: 0, ...(href === undefined ? {} : { href }) }) as const;
  const table = tableOf({
    title: "The sites",
    href: "/report",
    columns: [
      column("Site", "text", 4),
      column("Stop loss a year", "money", 2.4),
      column("Range (5–95 %)", "span", 3.4),
      column("Lines", "number", 1.4),
      column("Stops a year", "number", 1.8),
      column("Open projects", "number", 2),
      column("Actions late", "number", 1.8),
    ],
    rows: sites.map(({ code, name, loss, late, open }) => ({
      key: code,
      cells: [
        words(`${code} ${name}`, `/report?site=${encodeURIComponent(code)}`),
        { kind: "money", value: loss.total?.mean ?? null },
        { kind: "span", span: loss.total },
        number(loss.lines, "/lines"),
        number(loss.stopsPerYear, "/lines"),
        number(open, "/projects"),
        number(late, `/review?site=${encodeURIComponent(code)}`),
      ],
    })),
    most: 12,
    things: ["site", "sites"],
    none: "No site yet.",
  });
  const points = sites.map(({ loss }) => loss.total);
  return {
    ...table,
    chart: {
      title: "Stop loss a year by site with its range",
      unit: "EUR a year",
      series: [
        { name: "Low (5 %)", values: points.map((one) => one?.low ?? null) },
        { name: "Expected", values: points.map((one) => one?.mean ?? null) },
        { name: "High (95 %)", values: points.map((one) => one?.high ?? null) },
      ],
    },
  };
}
