import { mkdtemp, readFile, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import readWorkbook from "read-excel-file/node";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { askDueReports } from "@/lib/data/group/dueReports";
import { setReading } from "@/lib/data/reading";
import { readIssues } from "@/lib/data/reportArchive";
import { readReportWishes, setReportWish } from "@/lib/data/reportWish";
import { type Jobs, startJobs } from "@/lib/jobs/startJobs";
import { listen } from "@/lib/words/listen";
import { makeActor } from "@/test/support/actors";
import { type FreshDatabase, freshDatabase } from "@/test/support/database";
import { makeTwoSites, type TwoSites } from "@/test/support/twoSites";

const PATIENCE_MS = 40_000;

let fresh: FreshDatabase;
let folder: string;
let jobs: readonly Jobs[];
let places: TwoSites;
let planner: Actor;
let group: Actor;

beforeAll(async () => {
  listen();
  fresh = await freshDatabase("reportJobs");
  folder = await mkdtemp(join(tmpdir(), "ebbline-reports-"));
  delete process.env.EBBLINE_SMTP_URL;
  process.env.EBBLINE_DATA_FOLDER = folder;
  process.env.BETTER_AUTH_URL = "http://127.0.0.1:3000";
  places = await makeTwoSites();
  // Five hours behind UTC in winter.
  await database().site.update({ where: { id: places.south }, data: { timeZone: "America/New_York" } });
  planner = await makeActor("planner", places.north);
  group = await makeActor("approver", null);
  jobs = await Promise.all([startJobs(), startJobs()]);
});
afterAll(async () => {
  await Promise.all(jobs.map((one) => one.stop()));
  await rm(folder, { recursive: true });
  await fresh.close();
});

async function until(isThere: () => Promise<boolean>): Promise<boolean> {
  const end = performance.now() + PATIENCE_MS;
  while (performance.now() < end) {
    if (await isThere()) return true;
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
  return false;
}

const idle = () =>
  until(async () => {
    const rows = await database().$queryRaw<{ open: number }[]>`
      SELECT count(*)::int AS "open" FROM graphile_worker._private_jobs`;
    return rows[0]?.open === 0;
  });
const slots = async () =>
  (await database().reportIssue.findMany({ orderBy: { slot: "asc" } })).map(({ slot }) => slot);

const every = { kind: null, of: null };

describe("reports by the timetable", () => {
  test("are asked for by mail by who may read them, once each", async () => {
    const wish = { kind: "monthly", siteId: places.north, form: "pdf_letter" } as const;
    expect(await setReportWish(planner, { ...wish, siteId: places.south })).toMatchObject({
      error: { code: "missing" },
    });
    expect(await setReportWish(planner, { ...wish, siteId: null })).toMatchObject({
      error: { code: "missing" },
    });
    await Promise.all([setReportWish(planner, wish), setReportWish(planner, { ...wish, form: "pdf_a4" })]);
    expect((await readReportWishes(planner)).wishes).toHaveLength(1);
    await setReportWish(planner, wish);
    await setReportWish(group, { ...wish, siteId: null });
    await setReportWish(group, { ...wish, siteId: null });
    expect((await readReportWishes(group)).wishes).toMatchObject([{ siteId: null, form: "pdf_letter" }]);
  });

  test("are due on Monday and on the month's first day from six by the clock of each site", async () => {
    // A Sunday and a Tuesday in Warsaw, and Monday before six.
    for (const instant of ["2026-11-29T11:00:00Z", "2026-12-08T11:00:00Z", "2026-11-30T04:59:00Z"])
      expect(await askDueReports(instant, "Europe/Warsaw")).toBe(0);
    // Seven in Warsaw on the month's first day, one at night in New York.
    expect(await askDueReports("2026-12-01T06:00:00Z", "Europe/Warsaw")).toBe(2);
    expect(await idle()).toBe(true);
    expect(await slots()).toEqual([`monthly:${places.north}:2026-11`, "monthly:group:2026-11"]);
    expect(
      (await readIssues(planner, every)).map(({ period, asOf, issuedBy }) => [period, asOf, issuedBy]),
    ).toEqual([["2026-11", "2026-11-30", "Timetable"]]);
  });

  test("are made once by two processes that are asked at the same time, and again", async () => {
    const instants = ["2026-12-07T12:00:00Z", "2026-12-07T12:00:00Z", "2026-12-07T13:00:00Z"];
    await Promise.all(instants.map((instant) => askDueReports(instant, "Europe/Warsaw")));
    expect(await idle()).toBe(true);
    expect(await askDueReports("2026-12-07T14:00:00Z", "Europe/Warsaw")).toBe(0);
    const weekly = (await slots()).filter((slot) => slot?.startsWith("weekly"));
    expect(weekly.sort()).toEqual(
      [`weekly:${places.north}:2026-W49`, `weekly:${places.south}:2026-W49`].sort(),
    );
  });

  test("come to who asked for them with the PDF, as a file where there is no mail server", async () => {
    const { mails } = await readReportWishes(planner);
    expect(mails).toHaveLength(1);
    expect(mails[0]).toMatchObject({ title: "Monthly report of NOR Works NOR, Nov 2026", tries: 1 });
    const written = await readFile(mails[0]?.file ?? "", "utf8");
    expect(written).toContain("Subject: Monthly report, Nov 2026, NOR Works NOR");
    expect(written).toContain("filename=monthly-report-NOR-2026-11-letter.pdf");
    const attached = /Content-Type: application\/pdf;[\s\S]*?\r\n\r\n([A-Za-z0-9+/=\r\n]+)/.exec(
      written,
    )?.[1];
    const kept = await database().reportFile.findFirstOrThrow({
      where: { form: "pdf_letter", issue: { slot: `monthly:${places.north}:2026-11` } },
    });
    expect(Buffer.from(attached ?? "", "base64").equals(Buffer.from(kept.bytes))).toBe(true);
    expect((await readReportWishes(group)).mails).toHaveLength(1);
  });

  test("are written in the language most of those read who get them by mail", async () => {
    await setReading(planner, { language: "de", numbers: null });
    await askDueReports("2027-01-01T07:00:00Z", "Europe/Warsaw");
    expect(await idle()).toBe(true);
    const { mails } = await readReportWishes(planner);
    const written = await readFile(mails[0]?.file ?? "", "utf8");
    expect(written).toContain("Subject: Monatsbericht");
    const sheetOf = async (siteId: string | null) => {
      const issue = await database().reportIssue.findFirstOrThrow({
        where: { siteId, kind: "monthly", period: "2026-12" },
        select: { files: { where: { form: "xlsx" }, select: { bytes: true } } },
      });
      return JSON.stringify(await readWorkbook(Buffer.from(issue.files[0]?.bytes ?? [])));
    };
    expect(await sheetOf(places.north)).toContain("Stillstand");
    expect(await sheetOf(null)).not.toContain("Stillstand");
  });

  test("are not sent to who may no longer read the site, and not made where the calendar stands", async () => {
    await database().grant.deleteMany({ where: { userId: planner.userId } });
    const issue = await database().reportIssue.findFirstOrThrow({ where: { siteId: places.south } });
    await database().reportMail.create({
      data: { id: crypto.randomUUID(), userId: planner.userId, issueId: issue.id, form: "pdf_a4" },
    });
    const { id } = await database().reportMail.findFirstOrThrow({ where: { issueId: issue.id } });
    await database().$executeRaw`
      SELECT graphile_worker.add_job('sendReport', json_build_object('mailId', ${id}::text))`;
    expect(await idle()).toBe(true);
    expect(await database().reportMail.count({ where: { id } })).toBe(0);
    await database().setting.create({ data: { key: "asOf", value: "2026-11-30" } });
    expect(await askDueReports("2027-01-01T12:00:00Z", "Europe/Warsaw")).toBe(0);
  });
});
