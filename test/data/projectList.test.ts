import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { readProject } from "@/lib/data/project";
import { readPaidByQuarter, readProjectList } from "@/lib/data/projectList";
import { type ProjectFigures, projectFigures } from "@/lib/view/project";
import { cashByQuarter, cashTotals } from "@/lib/view/projectCash";
import { load } from "@/seed/load";
import { showcase } from "@/seed/scenarios/showcase/showcase";
import { makeActor } from "../support/actors";
import { type FreshDatabase, freshDatabase } from "../support/database";

const D0 = "2026-11-30";
const CODES = ["KAR-02-R1", "THO-01-S1", "VEL-09-R1"];
let made: FreshDatabase;
let everywhere: Actor;
const day = (text: string) => new Date(`${text}T00:00:00Z`);

beforeAll(async () => {
  made = await freshDatabase("project_list");
  await load(made.url, "showcase", showcase());
  everywhere = await makeActor("viewer");
});

afterAll(() => made.close());

type Row = Awaited<ReturnType<typeof readProjectList>>[number];

async function expectSame(asOf: string) {
  const rows = await readProjectList(everywhere, asOf);
  expect(rows.map(({ code }) => code)).toEqual(CODES);
  for (const row of rows) {
    const project = await readProject(everywhere, row.code);
    if (!project) throw new Error(`no project ${row.code}`);
    expect([asOf, ...listed(row)]).toEqual([asOf, ...shown(projectFigures(project, asOf))]);
  }
}

/** An index that divides by nothing is none; the others to nine digits, as the two add up in another order. */
const digits = (value: number | null | undefined) => value?.toPrecision(9) ?? null;

const listed = (row: Row) => [
  ...[row.budget, row.paid, row.open, row.contingencyLeft, row.overdue, row.overrun],
  ...[row.plannedShare, row.earnedShare, row.cpi, row.spi, row.trend].map(digits),
  ...[row.eacSpan?.low, row.eacSpan?.high].map(digits),
];

const shown = ({ control, eacSpan, ledger, overdue, overrun, ...figures }: ProjectFigures) => [
  ...[figures.budget, figures.actual, figures.committed, ledger.contingencyLeft, overdue.length],
  overrun?.state ?? null,
  ...[figures.planned, figures.earned, control?.cpi, control?.spi, control?.eac.trend].map(digits),
  ...[eacSpan?.low, eacSpan?.high].map(digits),
];

describe("the list of projects", () => {
  it("tells the one overrun of the demonstration, and none where work costs what was planned", async () => {
    const rows = await readProjectList(everywhere, D0);
    expect(rows.map(({ code, overrun }) => `${code} ${overrun}`)).toEqual([
      ...["KAR-02-R1 budget", "THO-01-S1 kept", "VEL-09-R1 kept"],
    ]);
  });

  it("says of each project what its page says, on several days", async () => {
    for (const asOf of ["2025-12-01", "2026-06-20", "2026-10-15", D0, "2027-03-01"]) await expectSame(asOf);
  });

  it("says so still with invoices for orders, approved changes and axes that did some of their steps", async () => {
    const project = await database().project.findUniqueOrThrow({ where: { code: "KAR-02-R1" } });
    const projectId = project.id;
    const entry = { projectId, kind: "actual" as const, spentOn: day("2026-11-20"), text: "Invoice" };
    await database().costEntry.createMany({
      data: [
        { ...entry, amount: "200000.01", reference: "T-1", orderReference: "PO-1871" },
        { ...entry, amount: "200000.01", reference: "T-2", orderReference: "PO-26-1871" },
        {
          ...entry,
          amount: "700000",
          reference: "T-3",
          orderReference: "PO-26-2218",
          costClass: "contingency",
        },
      ],
    });
    await database().changeOrder.create({
      data: {
        ...{ projectId, number: 9, what: "More", why: "Test", source: "new_money", state: "approved" },
        ...{ askedBy: "a", askedOn: day("2026-11-01"), decidedBy: "b", decidedOn: day("2026-11-02") },
        amounts: {
          create: [
            { costClass: "contingency", amount: "50000.5" },
            { costClass: "drives", amount: "-1000" },
          ],
        },
      },
    });
    const axes = await database().axis.findMany({
      where: { machine: { lineId: project.lineId } },
      orderBy: { id: "asc" },
      take: 5,
    });
    await database().axisStep.createMany({
      data: axes.map(({ id }, i) => ({
        ...{ projectId, axisId: id, step: "powered" as const, doneOn: day(`2026-11-1${i}`) },
        ...{ doneBy: "a", recordedBy: "a" },
      })),
      skipDuplicates: true,
    });
    for (const asOf of ["2026-11-12", D0]) await expectSame(asOf);
  });

  it("shows nobody a project of another site", async () => {
    const tho = await database().site.findUniqueOrThrow({ where: { code: "THO" } });
    const actor = await makeActor("viewer", tho.id);
    expect((await readProjectList(actor, D0)).map(({ code }) => code)).toEqual(["THO-01-S1"]);
    const paid = await readPaidByQuarter(actor, D0);
    expect(paid).toEqual([{ from: "2026-10-01", currency: "GBP", amount: 15_400 }]);
  });
});

describe("the money of all projects", () => {
  it("by quarter adds up to what is paid and what is still to be paid", async () => {
    const projects = await readProjectList(everywhere, D0);
    const quarters = cashByQuarter(projects, await readPaidByQuarter(everywhere, D0), D0);
    const { paid, end } = cashTotals(projects);
    const sum = (key: "paid" | "expected") => quarters.reduce((all, one) => all + one[key], 0);
    expect(sum("paid")).toBeCloseTo(paid, 4);
    // Karlsvik's lead states SEK 6.2 M; none of the three has paid more than its lead states.
    expect(sum("expected")).toBeCloseTo(end - paid, 4);
    expect(quarters.map(({ label }) => label)).toContain("2027 Q1");
  });
});
