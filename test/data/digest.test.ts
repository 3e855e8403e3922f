import { mkdtemp, readFile, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { askDigest, readDigest, setDigest } from "@/lib/data/digest";
import { askDueDigests } from "@/lib/data/group/digestMails";
import { setReading } from "@/lib/data/reading";
import { addReviewAction } from "@/lib/data/reviewActionChange";
import { type Jobs, startJobs } from "@/lib/jobs/startJobs";
import { digestTraceWords } from "@/lib/view/digestTrace";
import { listen } from "@/lib/words/listen";
import { makeActor } from "@/test/support/actors";
import { type FreshDatabase, freshDatabase } from "@/test/support/database";
import { mailServer } from "@/test/support/mailServer";
import { makeTwoSites, type TwoSites } from "@/test/support/twoSites";

const PATIENCE_MS = 25_000;

let fresh: FreshDatabase;
let server: Awaited<ReturnType<typeof mailServer>>;
let folder: string;
let jobs: readonly Jobs[];
let places: TwoSites;
let planner: Actor;

beforeAll(async () => {
  listen();
  fresh = await freshDatabase("digest");
  server = await mailServer();
  folder = await mkdtemp(join(tmpdir(), "ebbline-mails-"));
  process.env.EBBLINE_SMTP_URL = server.url;
  process.env.EBBLINE_MAIL_FROM = "spares@halvenor.example";
  process.env.EBBLINE_DATA_FOLDER = folder;
  process.env.BETTER_AUTH_URL = "http://127.0.0.1:3000";
  places = await makeTwoSites();
  planner = await makeActor("planner", places.north);
  jobs = await Promise.all([startJobs(), startJobs()]);
  const late = { siteId: places.north, text: "Count <shelf> & bins", partId: null, lineId: null };
  await addReviewAction(planner, { ...late, ownerId: planner.userId, dueOn: "2020-01-01" });
});
afterAll(async () => {
  await Promise.all(jobs.map((one) => one.stop()));
  await server.close();
  await rm(folder, { recursive: true });
  await fresh.close();
});

async function until(isThere: () => boolean | Promise<boolean>): Promise<boolean> {
  const end = performance.now() + PATIENCE_MS;
  while (performance.now() < end) {
    if (await isThere()) return true;
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
  return false;
}

/** Gives the queue something to do, after which it looks for what is due again; by itself it looks every minute. */
function nudged(isThere: () => Promise<boolean>): () => Promise<boolean> {
  return async () => {
    await database().$executeRaw`SELECT graphile_worker.add_job('weeklyDigests', job_key := 'nudge')`;
    return isThere();
  };
}

const lastMail = async () => (await readDigest(planner)).mails[0];
/** Lines put together again, and the marks of quoted-printable (RFC 2045) undone. */
const readable = (mail: string) =>
  Buffer.from(
    mail
      .replaceAll("=\r\n", "")
      .replace(/=([0-9A-F]{2})/g, (_, hex: string) => String.fromCharCode(Number.parseInt(hex, 16))),
    "latin1",
  ).toString("utf8");

describe("the week by mail", () => {
  test("is nobody's until asked for, and of no foreign site", async () => {
    expect(await askDigest(planner)).toMatchObject({ error: { code: "impossible" } });
    expect(await setDigest(planner, { siteId: places.south })).toMatchObject({ error: { code: "missing" } });
    expect(await setDigest(planner, { siteId: places.north })).toMatchObject({ ok: true });
    expect(await readDigest(planner)).toMatchObject({ siteId: places.north, folder: null, mails: [] });
  });

  test("leaves once, with what its reader may see, however many processes send", async () => {
    expect(await askDigest(planner)).toMatchObject({ ok: true });
    expect(await until(async () => (await lastMail())?.sentAt !== null)).toBe(true);
    expect(server.inbox.taken).toHaveLength(1);
    const mail = readable(server.inbox.taken[0] ?? "");
    expect(mail).toMatch(/^From: spares@halvenor\.example/m);
    expect(mail).toContain(`To: ${planner.email}`);
    expect(mail).toContain("Subject: Spares of NOR: 0 parts got worse, 1 action of yours late");
    expect(mail).toContain("YOUR LATE ACTIONS\r\n- Count <shelf> & bins, due 1 Jan 2020");
    expect(mail).toContain("<li>Count &lt;shelf&gt; &amp; bins, due 1 Jan 2020");
    expect(mail).toContain("http://127.0.0.1:3000/review?site=NOR");
    expect(mail).not.toMatch(/SUD/);
  });

  test("is tried again when the server refuses it, and says so meanwhile", async () => {
    const before = server.inbox.offered;
    server.inbox.refusals = 1;
    await askDigest(planner);
    expect(await until(async () => (await lastMail())?.problem !== null)).toBe(true);
    const failed = await lastMail();
    expect(failed).toMatchObject({ sentAt: null, tries: 1 });
    expect(failed && digestTraceWords(failed, "UTC")).toMatch(
      /not sent after 1 try, and tried again\. .*452/,
    );
    expect(await askDigest(planner)).toMatchObject({ error: { code: "conflict" } });
    expect(await until(nudged(async () => (await lastMail())?.sentAt !== null))).toBe(true);
    expect(await lastMail()).toMatchObject({ tries: 2, problem: null });
    expect(server.inbox.offered - before).toBe(2);
    expect(server.inbox.taken).toHaveLength(2);
  });

  test("goes on Monday from six by the clock of the site, once a week, whoever asks", async () => {
    expect(await askDueDigests("2026-11-23T04:59:00Z")).toBe(0);
    expect(await askDueDigests("2026-11-24T09:00:00Z")).toBe(0);
    const monday = ["2026-11-23T05:01:00Z", "2026-11-23T05:01:00Z", "2026-11-23T09:00:00Z"];
    const asked = await Promise.all(monday.map(askDueDigests));
    expect(asked.reduce((sum, count) => sum + count, 0)).toBe(1);
    expect(await until(() => server.inbox.taken.length === 3)).toBe(true);
    expect(await askDueDigests("2026-11-30T05:01:00Z")).toBe(1);
    expect(await until(() => server.inbox.taken.length === 4)).toBe(true);
  });

  test("is written to a file where no server is set", async () => {
    delete process.env.EBBLINE_SMTP_URL;
    expect((await readDigest(planner)).folder).toBe(`${folder}/mails`);
    await askDigest(planner);
    expect(await until(async () => (await lastMail())?.file !== null)).toBe(true);
    const file = (await lastMail())?.file ?? "";
    expect(readable(await readFile(file, "utf8"))).toContain("Subject: Spares of NOR");
    expect(server.inbox.taken).toHaveLength(4);
    process.env.EBBLINE_SMTP_URL = server.url;
  });

  test("is in the words and numbers its reader chose", async () => {
    const taken = server.inbox.taken.length;
    await setReading(planner, { language: "de", numbers: null });
    await askDigest(planner);
    expect(await until(() => server.inbox.taken.length > taken)).toBe(true);
    const mail = readable(server.inbox.taken[taken] ?? "");
    expect(mail).toContain("IHRE VERSPÄTETEN MASSNAHMEN\r\n- Count <shelf> & bins");
    expect(mail).toContain("1. Jan. 2020");
  });

  test("ends with the right to read the site, and when it is ended", async () => {
    await database().grant.deleteMany({ where: { userId: planner.userId } });
    expect(await askDueDigests("2026-12-07T09:00:00Z")).toBe(0);
    await database().grant.create({
      data: { userId: planner.userId, role: "planner", siteId: places.north },
    });
    expect(await setDigest(planner, { siteId: null })).toMatchObject({ ok: true });
    expect(await askDueDigests("2026-12-07T09:00:00Z")).toBe(0);
  });
});
