import { randomUUID } from "node:crypto";
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { startEmbedded } from "@/lib/launch/embedded/startEmbedded";
import { makeDatabase } from "@/lib/launch/fillDatabase";
import { stateFolder } from "@/lib/launch/folders";
import { type Life, live } from "@/lib/launch/live";
import { load } from "@/seed/load";
import { small } from "@/seed/scenarios/small";
import { machine } from "@/test/bench/machine";
import { signInAs } from "@/test/faults/actionCaller";
import { type Request, send, sendUntilAnswered } from "@/test/faults/caller";
import { type Grounds, readGrounds } from "@/test/faults/grounds";
import { makeTools } from "@/test/faults/installation";
import { mountSmall } from "@/test/faults/smallDisk";
import { on } from "@/test/support/archives";
import { addAccounts, type SecondApp, startSecondApp } from "@/test/support/secondApp";

/** Faults other than kill -9, each against the built server and a real database: `npm run faults:other`. */

interface Place {
  readonly url: string;
  readonly app: SecondApp;
  readonly key: string;
  readonly grounds: Grounds;
}

type Found = readonly [what: string, holds: boolean, seen: string];

const HOOK = "http://127.0.0.1:9/none";
const ADMIN = ["admin@halvenor.example", "demo-admin-2026"] as const;
const MEGABYTES = 420;

/** A small company on a database in that folder, served once. */
async function open(folder: string, life: Life): Promise<Place> {
  const server = await startEmbedded(folder);
  life.endWith(server.stop);
  const url = await makeDatabase(server.url, "ebbline_troubles", async (fresh) => {
    await load(fresh, "small", small());
    await addAccounts(fresh).catch(() => undefined);
  });
  const app = await startSecondApp(url);
  life.endWith(app.stop);
  const { keys } = await makeTools(url, HOOK);
  return { url, app, key: keys[0] ?? "", grounds: await readGrounds(url) };
}

const eventAt = ({ key, grounds }: Place, i: number): Request => ({
  ...{ method: "POST", path: "/events", key },
  body: JSON.stringify({
    ...{ positionId: grounds.positionIds[i % grounds.positionIds.length], kind: "failure", unitOut: "scrap" },
    ...{ happenedAt: "2026-11-20T06:00", text: `trouble ${i} `.padEnd(400, "x"), sure: true },
  }),
});

const sendOnce = (place: Place, i: number) =>
  send(`${place.app.address}/api/v1/events`, eventAt(place, i), randomUUID());

/** Writes until the disk has no room, then makes room. */
async function fullDisk(place: Place, disk: ReturnType<typeof mountSmall>): Promise<Found[]> {
  disk.fill();
  let refused: Awaited<ReturnType<typeof sendOnce>>;
  for (let i = 0; i < 400 && refused === undefined; i++) {
    const answer = await sendOnce(place, i);
    if (answer && answer.status >= 500) refused = answer;
  }
  const health = await fetch(`${place.app.address}/api/health`);
  disk.makeRoom();
  const again = await sendUntilAnswered(() => place.app.address, eventAt(place, 999));
  return [
    ["a write on a full disk is refused in words", refused?.status === 507, JSON.stringify(refused?.json)],
    ["the application lives and reads meanwhile", health.ok, String(health.status)],
    ["it writes again once there is room", again !== undefined, JSON.stringify(again)],
  ];
}

/** A day is longer than a session lasts without use, so it ends there, as it should. */
const SHIFTS = [
  { name: "an hour back", stays: true },
  { name: "a day forward", stays: false },
  { name: "right again", stays: true },
];

/** The clock of the application jumps; who is signed in stays so, writes are taken, people sign in. */
async function jumpingClock(place: Place): Promise<Found[]> {
  const { app } = place;
  const lines = async (cookie: string) =>
    (await fetch(`${app.address}/lines`, { headers: { Cookie: cookie }, redirect: "manual" })).status;
  let cookie = await signInAs(app.address, ...ADMIN);
  const found: Found[] = [];
  for (const [i, { name, stays }] of SHIFTS.entries()) {
    app.send("SIGUSR2");
    await new Promise((resolve) => setTimeout(resolve, 300));
    const before = await lines(cookie);
    const write = await sendOnce(place, 2_000 + i);
    cookie = await signInAs(app.address, ...ADMIN);
    const after = await lines(cookie);
    const holds = (before === 200) === stays && write?.status === 201 && after === 200;
    const said = `page ${before}, write ${write?.status}, page after signing in ${after}`;
    found.push([
      `with the clock ${name} writes and sign-in go on${stays ? ", and so do sessions" : ""}`,
      holds,
      said,
    ]);
  }
  return found;
}

const AT_ONCE = 12;

/** Asked to stop while requests come in: what it took is answered and stored, what it did not take is not. */
async function stopUnderLoad(place: Place): Promise<Found[]> {
  const asked = Array.from({ length: AT_ONCE }, (_, i) => sendOnce(place, 3_000 + i));
  await new Promise((resolve) => setTimeout(resolve, 400));
  const stopped = place.app.stop();
  const answers = (await Promise.all(asked)).map((answer) => answer?.status ?? "none");
  await stopped;
  const after = await sendOnce(place, 4_000);
  const stored = await on(place.url, (client) =>
    client.query(`SELECT FROM "Event" WHERE "text" LIKE 'trouble 3___ %'`),
  );
  const done = answers.filter((status) => status === 201).length;
  return [
    [
      "asked to stop, it answers and stores what it took, and stores nothing it did not answer",
      done > 0 && stored.rowCount === done && answers.every((one) => one === 201 || one === "none"),
      `${answers.join(" ")}, ${stored.rowCount} stored`,
    ],
    ["nothing is taken after", after === undefined, String(after?.status ?? "no answer")],
  ];
}

await live(async (life) => {
  process.env.NODE_OPTIONS = `--import ${join(import.meta.dirname, "shiftedClock.mjs")}`;
  process.env.FAULTS_CLOCK_SHIFTS = "-3600,86400,0";
  process.env.BETTER_AUTH_SECRET ??= "of-the-script-that-plays-the-other-faults";
  process.env.EBBLINE_WEBHOOK_ALLOW = "127.0.0.1";
  const disk = mountSmall(join(stateFolder, "troubles"), MEGABYTES);
  life.endWith(disk.remove);
  const place = await open(join(disk.folder, "database"), life);
  const found = [
    ...(await fullDisk(place, disk)),
    ...(await jumpingClock(place)),
    ...(await stopUnderLoad(place)),
  ];
  const lines = found.map(
    ([what, holds, seen]) => `| ${what} | ${holds ? "yes" : "NO"} | ${seen.replaceAll("|", " ")} |`,
  );
  const head = `# Other faults\n\nWritten by \`npm run faults:other\`, not by hand. ${machine()}.\n\n| what | holds | seen |\n| ---- | ----- | ---- |\n`;
  writeFileSync(join(import.meta.dirname, "troubles.md"), `${head}${lines.join("\n")}\n`);
  process.stdout.write(`${lines.join("\n")}\n`);
  return found.every(([, holds]) => holds) ? 0 : 1;
}, 1);
