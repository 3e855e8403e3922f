import { readFileSync } from "node:fs";
import { loadavg } from "node:os";
import { database } from "@/lib/data/client";
import { live } from "@/lib/launch/live";
import { openLarge } from "@/test/bench/largeDatabase";
import { figuresOf, type KindFigures, tableOf } from "@/test/bench/loadFigures";
import { requestKinds } from "@/test/bench/loadKinds";
import { addPeople } from "@/test/bench/loadPeople";
import { runLoad } from "@/test/bench/loadRun";
import { machine } from "@/test/bench/machine";
import { serveApp } from "@/test/bench/servedApp";

const USERS = (process.env.EBBLINE_BENCH_USERS ?? "50,500").split(",").map(Number);
const SECONDS = Number(process.env.EBBLINE_BENCH_SECONDS ?? 120);
const THINK_SECONDS = Number(process.env.EBBLINE_BENCH_THINK_SECONDS ?? 20);
const WARM_SECONDS = 15;
const MOST_TIMES_FLOOR = 3;
const MOST_MS = 1000;
const HELD_TO_FLOOR = ["ranking", "search"];

/** What misses a target, in words. */
function misses(figures: readonly KindFigures[]): string[] {
  const floor = figures[0]?.p95 ?? Number.NaN;
  return figures.flatMap(({ kind, p95, slowest, errors }) => [
    ...(HELD_TO_FLOOR.includes(kind) && !(p95 <= MOST_TIMES_FLOOR * floor)
      ? [`${kind}: p95 ${(p95 / floor).toFixed(2)} times the floor's, at most ${MOST_TIMES_FLOOR}`]
      : []),
    ...(slowest > MOST_MS ? [`${kind}: the slowest took ${slowest.toFixed(0)} ms, at most ${MOST_MS}`] : []),
    ...(errors > 0 ? [`${kind}: ${errors} wrong answers`] : []),
  ]);
}

/** Seconds of processor a process has used, and the memory it holds, MB. */
function usedBy(pid: number) {
  const stat = readFileSync(`/proc/${pid}/stat`, "utf8").split(") ")[1]?.split(" ") ?? [];
  const resident = /VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${pid}/status`, "utf8"))?.[1];
  return { seconds: (Number(stat[11]) + Number(stat[12])) / 100, megabytes: Number(resident) / 1024 };
}

await live(async (life) => {
  process.env.DATABASE_URL = await openLarge(life);
  life.endWith(() => database().$disconnect());
  const app = await serveApp(process.env.DATABASE_URL, life);
  const people = await addPeople(Math.max(...USERS), app.secret);
  life.endWith(people.remove);
  const terms = {
    address: app.address,
    webhookId: people.webhookId,
    saveStockLot: app.actionId("saveStockLot"),
  };
  const kinds = await requestKinds(terms);
  const run = { address: app.address, kinds, thinkSeconds: THINK_SECONDS };
  console.log(machine());
  // The first evaluation of a process is no part of a working day, and neither is code not yet compiled.
  await fetch(`${app.address}/lines`, { headers: { Cookie: people.cookies[0] ?? "" } });
  await runLoad({ ...run, cookies: people.cookies.slice(0, 20), seconds: WARM_SECONDS, thinkSeconds: 1 });
  let missed = 0;
  for (const users of USERS) {
    const before = usedBy(app.pid);
    const timings = await runLoad({ ...run, cookies: people.cookies.slice(0, users), seconds: SECONDS });
    const after = usedBy(app.pid);
    const figures = figuresOf(
      timings,
      kinds.map(({ name }) => name),
    );
    console.log(
      `\n${users} users, closed, ${THINK_SECONDS} s of thinking on average, ${SECONDS} s: ` +
        `${(timings.length / SECONDS).toFixed(1)} requests a second, ` +
        `server ${((after.seconds - before.seconds) / SECONDS).toFixed(2)} of a core, ${after.megabytes.toFixed(0)} MB, ` +
        `load of the machine ${loadavg()[0]?.toFixed(1)}\n`,
    );
    console.log(tableOf(figures));
    for (const { kind, error } of timings.filter(({ error }) => error !== null).slice(0, 5))
      console.log(`wrong: ${kind}: ${error}`);
    for (const miss of misses(figures)) console.log(`missed: ${miss}`);
    missed += misses(figures).length;
  }
  return missed === 0 ? 0 : 1;
}, 1);
