import { createHash } from "node:crypto";
import readWorkbook from "read-excel-file/node";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { readReport } from "@/lib/data/report";
import { readIssue, readIssueFile, readIssues } from "@/lib/data/reportArchive";
import { issueReport } from "@/lib/data/reportIssue";
import { reportFiles } from "@/lib/reports/reportFiles";
import { REPORT_FORMS } from "@/lib/schema/report";
import { monthlyReport } from "@/lib/view/reportMonth";
import { makeActor } from "@/test/support/actors";
import { type FreshDatabase, freshDatabase } from "@/test/support/database";
import { readPdf, readSlides } from "@/test/support/readReportFiles";
import { asOf, makeTwoSites, type TwoSites } from "@/test/support/twoSites";

let fresh: FreshDatabase;
let places: TwoSites;
let planner: Actor;
let southern: Actor;
let group: Actor;
let viewer: Actor;

beforeAll(async () => {
  fresh = await freshDatabase("reportArchive");
  process.env.BETTER_AUTH_URL = "http://127.0.0.1:3000";
  places = await makeTwoSites();
  planner = await makeActor("planner", places.north);
  southern = await makeActor("planner", places.south);
  group = await makeActor("approver", null);
  viewer = await makeActor("viewer", places.north);
});
afterAll(() => fresh.close());

async function read(actor: Actor, siteCode: string | null) {
  const input = await readReport(actor, { asOf, siteCode });
  if (!input) throw new Error(`no report of ${siteCode}`);
  return monthlyReport(input);
}

async function issue(actor: Actor, siteId: string | null, siteCode: string | null) {
  const { dataVersion } = (await read(actor, siteCode)).basis;
  const answer = await issueReport(actor, { kind: "monthly", siteId, asOf, dataVersion });
  if (!answer.ok) throw new Error(answer.error.reason);
  return answer.value.issueId;
}

/** What slides say; the library numbers the charts of all files it wrote. */
const said = ({ texts, tables, charts, links }: ReturnType<typeof readSlides>) => ({
  ...{ texts, tables, charts, links: links.sort() },
});

const every = { kind: null, of: null };

describe("a report that was given out", () => {
  test("is what was on the screen, whoever of the site looks, with a file in each form", async () => {
    const id = await issue(planner, places.north, "NOR");
    const kept = await readIssue(viewer, id);
    expect(kept?.document).toEqual(JSON.parse(JSON.stringify(await read(viewer, "NOR"))));
    // Somebody of the whole group has the same figures of the site.
    expect(kept?.document).toEqual(JSON.parse(JSON.stringify(await read(group, "NOR"))));
    expect(kept?.mark).toMatchObject({
      ...{ kind: "monthly", siteCode: "NOR", period: "2026-11", asOf, issuedBy: planner.name },
    });
    expect(kept?.mark.files.map(({ form }) => form)).toEqual([...REPORT_FORMS]);
  });

  test("stays as it was, byte for byte, when the records change", async () => {
    const id = await issue(planner, places.north, "NOR");
    const before = await readIssue(planner, id);
    const files = await Promise.all(REPORT_FORMS.map((form) => readIssueFile(planner, { id, form })));
    await database().line.update({
      where: { id: places.lines["NOR-01"] ?? "" },
      data: { costPerHour: 9000 },
    });
    await database().dataVersion.update({ where: { id: 1 }, data: { version: { increment: 1 } } });
    const now = await read(planner, "NOR");
    expect(now.headline?.loss?.mean).toBeGreaterThan(1.2 * (before?.document.headline?.loss?.mean ?? 0));
    expect(await readIssue(planner, id)).toEqual(before);
    for (const [place, form] of REPORT_FORMS.entries()) {
      const again = await readIssueFile(planner, { id, form });
      expect(again).toEqual(files[place]);
      expect(
        createHash("sha256")
          .update(again?.bytes ?? "")
          .digest("hex"),
      ).toBe(again?.hash);
    }
  });

  test("says the same when its files are drawn again from what was kept", async () => {
    const id = await issue(planner, places.north, "NOR");
    const kept = await readIssue(planner, id);
    if (!kept) throw new Error("no issue");
    for (const { form, bytes } of await reportFiles(kept.document, "http://127.0.0.1:3000")) {
      const file = await readIssueFile(planner, { id, form });
      const [first, again] = [file?.bytes ?? new Uint8Array(), bytes];
      if (form === "pptx") expect(said(readSlides(again))).toEqual(said(readSlides(first)));
      else if (form === "xlsx")
        expect(await readWorkbook(Buffer.from(again))).toEqual(await readWorkbook(Buffer.from(first)));
      else expect(await readPdf(again)).toEqual(await readPdf(first));
    }
  });

  test("cannot be changed or taken away, whoever writes", async () => {
    const id = await issue(planner, places.north, "NOR");
    const where = { id };
    await expect(database().reportIssue.update({ where, data: { issuedBy: "else" } })).rejects.toThrow(
      /stays/,
    );
    await expect(database().reportFile.deleteMany({ where: { issueId: id } })).rejects.toThrow(/stays/);
    await expect(
      database().reportFile.updateMany({ where: { issueId: id }, data: { bytes: Buffer.from("x") } }),
    ).rejects.toThrow(/stays/);
    await expect(database().reportIssue.delete({ where })).rejects.toThrow();
  });

  test("is kept from people of other sites, and the group's from those of one", async () => {
    const north = await issue(planner, places.north, "NOR");
    const whole = await issue(group, null, null);
    expect(await readIssue(southern, north)).toBeNull();
    expect(await readIssueFile(southern, { id: north, form: "xlsx" })).toBeNull();
    expect(await readIssue(southern, whole)).toBeNull();
    expect(await readIssueFile(planner, { id: whole, form: "pdf_a4" })).toBeNull();
    expect((await readIssues(southern, every)).length).toBe(0);
    expect((await readIssues(viewer, every)).every(({ siteCode }) => siteCode === "NOR")).toBe(true);
    expect((await readIssues(group, every)).some(({ siteCode }) => siteCode === null)).toBe(true);
    expect((await readIssues(southern, { kind: null, of: "NOR" })).length).toBe(0);
    expect((await readIssues(group, { kind: "monthly", of: "group" })).map(({ id }) => id)).toEqual([whole]);
    expect((await readIssues(group, { kind: "weekly", of: "group" })).length).toBe(0);
    expect(JSON.stringify((await readIssue(planner, north))?.document)).not.toMatch(/SUD/);
    expect(await readIssue(planner, "no such id")).toBeNull();
  });

  test("is given out by who may, for a site that is theirs, as it was looked at", async () => {
    const { dataVersion } = (await read(planner, "NOR")).basis;
    const asked = { kind: "monthly", siteId: places.north, asOf, dataVersion } as const;
    const missing = { ok: false, error: { code: "missing" } };
    expect(await issueReport(viewer, asked)).toMatchObject(missing);
    expect(await issueReport(southern, asked)).toMatchObject(missing);
    expect(await issueReport(planner, { ...asked, siteId: null })).toMatchObject(missing);
    expect(await issueReport(group, { ...asked, siteId: null, kind: "weekly" })).toMatchObject(missing);
    const before = await database().reportIssue.count();
    expect(await issueReport(planner, { ...asked, dataVersion: dataVersion + 1 })).toMatchObject({
      error: { code: "conflict" },
    });
    expect(await database().reportIssue.count()).toBe(before);
  });

  test("of a week tells what changed since the last", async () => {
    const { dataVersion } = (await read(planner, "NOR")).basis;
    const answer = await issueReport(planner, { kind: "weekly", siteId: places.north, asOf, dataVersion });
    expect(answer).toMatchObject({ ok: true });
    const kept = answer.ok ? await readIssue(planner, answer.value.issueId) : null;
    // 2026-11-30 is a Monday, of ISO week 49.
    expect(kept?.document).toMatchObject({ kind: "weekly", period: "2026-W49", siteCode: "NOR" });
    expect(kept?.document.pages[0]?.blocks[0]).toMatchObject({ title: "What got worse" });
  });
});
