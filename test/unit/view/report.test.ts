import { describe, expect, test } from "vitest";
import { money } from "@/lib/view/format";
import { homeOf } from "@/lib/view/home";
import type { Obligation } from "@/lib/view/obligation";
import { firstLines, reportLoss } from "@/lib/view/report";
import { cellsOf } from "@/lib/view/reportCell";
import { decisionsAsked } from "@/lib/view/reportDecisions";
import type { ReportDocument, ReportTable } from "@/lib/view/reportDocument";
import { monthlyReport } from "@/lib/view/reportMonth";
import { lineNeed } from "@/lib/view/reportNeeds";
import { lineOf, reportInput } from "@/test/support/reportInput";

const LINES = [
  ...[10, 60, 30].map((loss, place) => lineOf(`KAR-0${place + 1}`, 1_000 * loss)),
  ...[50, 20, 40].map((loss, place) => lineOf(`VEL-0${place + 1}`, 1_000 * loss)),
  lineOf("VEL-09", null),
];
const group = reportInput(LINES);
const site = reportInput(LINES, [{ id: "v", code: "VEL", name: "Velmark" }]);

const tablesOf = ({ pages }: ReportDocument) =>
  pages.flatMap(({ blocks }) => blocks).filter((block): block is ReportTable => block.kind === "table");
function table(report: ReportDocument, title: RegExp): ReportTable {
  const found = tablesOf(report).find((one) => title.test(one.title));
  if (!found) throw new Error(`no table ${title}`);
  return found;
}
const texts = (one: ReportTable) => one.rows.map((row) => cellsOf(one, row).map(({ text }) => text));

describe("the monthly report as a document", () => {
  test("opens with the summed loss and its range", () => {
    const { headline } = monthlyReport(group);
    expect(headline?.loss).toEqual(reportLoss(group).total);
    expect(headline?.loss?.mean).toBe(210_000);
    expect(headline?.sentences[0]).toContain("25\u00a0% of it, €\u00a052.5\u00a0k");
    expect(headline?.sentences[0]).toContain("on 1 line the cost per hour is not known");
  });

  test("has one page of several sites and two of one, and says whose it is", () => {
    expect(monthlyReport(group)).toMatchObject({
      siteCode: null,
      scope: "Group, 2 sites",
      period: "2026-11",
    });
    expect(monthlyReport(group).pages).toHaveLength(1);
    expect(monthlyReport(site)).toMatchObject({ siteCode: "VEL", scope: "VEL Velmark" });
    expect(monthlyReport(site).pages).toHaveLength(2);
    expect(monthlyReport(site).basis).toEqual({
      ...{ asOf: "2026-11-30", dataVersion: 7, engine: "ebbline-3", seed: 20261130 },
      assumptions: "assumptions likely, version 1",
    });
  });

  test("names the five lines that lose most, the same in words, in bars and on the home page", () => {
    const lines = table(monthlyReport(group), /five lines/);
    const first = firstLines(group, 5);
    expect(texts(lines).map(([name]) => name?.slice(0, 6))).toEqual([
      ...["KAR-02", "VEL-01", "VEL-03", "KAR-03", "VEL-02"],
    ]);
    expect(texts(lines).map(([, loss]) => loss)).toEqual(first.map(({ loss }) => money(loss.mean)));
    expect(lines.chart?.series.map(({ values }) => values[0])).toEqual([36_000, 60_000, 102_000]);
    expect(homeOf(group, () => true).lines.map(({ loss }) => loss)).toEqual(first.map(({ loss }) => loss));
    expect(homeOf(group, () => true).lines.map(({ need }) => need.text)).toEqual(
      texts(lines).map((row) => row[5]),
    );
  });

  test("to whom no amounts are shown the home page tells none: lines by score, decisions without sums", () => {
    const home = homeOf(group, () => false);
    expect(home.loss).toBeNull();
    const scores = home.lines.map(({ score }) => score);
    expect(scores).toEqual([...scores].sort((a, b) => b - a));
    expect(home.lines.map(({ loss }) => loss)).toEqual(home.lines.map(() => null));
    // Both the loss of the group and that of a line, told to others.
    expect(JSON.stringify(homeOf(group, () => true))).toMatch(/210000.*60000/);
    expect(JSON.stringify(home)).not.toMatch(/210000|60000|€|EUR/);
    // How projects stand is told by indices and stays.
    expect(home.projects).toEqual(homeOf(group, () => true).projects);
  });

  test("sets the sites side by side, and their losses add up to the group's", () => {
    const sites = table(monthlyReport(group), /sites/);
    const losses = sites.rows.map(({ cells: [, loss] }) => (loss?.kind === "money" ? (loss.value ?? 0) : 0));
    expect(losses).toEqual([100_000, 110_000]);
    expect(losses[0] ?? 0).toBeLessThan(losses[1] ?? 0);
    expect(losses.reduce((sum, one) => sum + one, 0)).toBe(monthlyReport(group).headline?.loss?.mean);
    expect(texts(sites).map((row) => row.slice(-2))).toEqual([
      ["1", "0"],
      ["0", "1"],
    ]);
  });

  test("shows an overrun of a project by its indices and three forecasts", () => {
    const projects = table(monthlyReport(group), /Projects/);
    const [row] = projects.rows;
    // 0.55 × 4.9 / 3.6; 0.55 / 0.7; 4.9 / 0.7486; 3.6 + 0.45 × 4.9; 3.6 + 2.205 / (0.7486 × 0.7857).
    expect(texts(projects)[0]?.slice(5)).toEqual([
      ...["0.75 / 0.79", "SEK\u202f6.55\u202fM", "SEK\u202f5.80\u202fM", "SEK\u202f7.35\u202fM"],
    ]);
    const pair = row?.cells[5];
    expect(pair?.kind === "pair" ? pair.values[0] : null).toBeCloseTo((0.55 * 4.9) / 3.6, 12);
    expect(projects.chart?.series.map(({ values }) => values[0])).toEqual([
      expect.closeTo(0.7486, 4),
      expect.closeTo(0.7857, 4),
    ]);
    expect(decisionsAsked(group)[0]).toEqual({
      text: expect.stringMatching(/^KAR-02-R1: take SEK.6\.55.M at the end for a budget of SEK.4\.90.M/),
      href: "/projects/KAR-02-R1",
    });
  });

  test("tells late actions with late milestones, the longest due first", () => {
    expect(texts(table(monthlyReport(group), /late/)).map((row) => row.slice(0, 3))).toEqual([
      ["30 Oct 2026", "KAR", "KAR-02-R1: Motors"],
      ["20 Nov 2026", "VEL", "Count it"],
    ]);
  });

  test("counts what finds no room", () => {
    const many = { ...group, lateActions: Array.from({ length: 9 }, () => group.lateActions[0] ?? never()) };
    const late = table(monthlyReport(many), /late/);
    expect(late.rows).toHaveLength(6);
    expect(late.note).toBe("And 4 late actions more.");
  });

  test("leads from every value to a page of the app", () => {
    const tables = [group, site].flatMap((input) => tablesOf(monthlyReport(input)));
    const places = tables.flatMap((one) => one.rows.flatMap((row) => cellsOf(one, row)));
    expect(places.length).toBeGreaterThan(100);
    expect(places.filter(({ href }) => !/^\/[a-z]/.test(href))).toEqual([]);
  });

  test("stays the same document when it is kept as text", () => {
    const report = monthlyReport(group);
    const kept = JSON.parse(JSON.stringify(report)) as ReportDocument;
    expect(tablesOf(kept).map(texts)).toEqual(tablesOf(report).map(texts));
  });
});

function never(): never {
  throw new Error("no action");
}

describe("what a line needs", () => {
  const line = lineOf("KAR-02", 1_000);
  const idle = { ...group, projects: [] };
  const duty: Obligation = {
    ...{ id: "o", siteId: "k", siteCode: "KAR", line: { id: "l", code: "KAR-02" }, kind: "safety" as const },
    ...{ title: "Test the light curtain", dueOn: "2026-11-01", source: "law", owner: null, version: 1 },
    ...{ evidence: "documented" as const, recordedOn: "2026-01-01", doneOn: null },
  };

  test("is first what binds and is overdue, then what is under way", () => {
    expect(lineNeed({ ...group, obligations: [duty] }, line).text).toBe(
      "Overdue since 1 Nov 2026: Test the light curtain",
    );
    expect(lineNeed(group, line)).toEqual({
      text: "KAR-02-R1: in work, to 31 Mar 2027",
      href: "/projects/KAR-02-R1",
    });
  });

  test("is then the cost agreed, and at last a way chosen", () => {
    expect(lineNeed(idle, { ...line, cost: null }).text).toBe("Its cost of an hour's stop approved");
    expect(lineNeed(idle, line).href).toBe("/lines/KAR-02/scope");
  });
});
