import { readFileSync } from "node:fs";
import { setTimeout as pause } from "node:timers/promises";
import { database } from "@/lib/data/client";
import { live } from "@/lib/launch/live";
import { openLarge } from "@/test/bench/largeDatabase";
import { requestKinds } from "@/test/bench/loadKinds";
import { addPeople } from "@/test/bench/loadPeople";
import { runLoad } from "@/test/bench/loadRun";
import { machine } from "@/test/bench/machine";
import { type ServedApp, serveApp } from "@/test/bench/servedApp";

const MINUTES = Number(process.argv[2] ?? 30);
const USERS = 50;
const THINK_SECONDS = 10;
const SAMPLE_MS = 30_000;
/** Flat: the last third holds at most so many times what the middle third held; the first third is warming up. */
const MOST_GROWTH = 1.1;
const MEGABYTE = 2 ** 20;

interface Sample {
  readonly minute: number;
  /** MB. */
  readonly resident: number;
  readonly heap: number;
}

async function sample({ address, pid, metricsToken }: ServedApp, since: number): Promise<Sample> {
  const answer = await fetch(`${address}/api/metrics`, {
    headers: { Authorization: `Bearer ${metricsToken}` },
  });
  const heap = /^nodejs_heap_size_used_bytes (\S+)/m.exec(await answer.text())?.[1];
  const resident = /VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${pid}/status`, "utf8"))?.[1];
  return {
    minute: (performance.now() - since) / 60_000,
    resident: Number(resident) / 1024,
    heap: Number(heap) / MEGABYTE,
  };
}

const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;

/** How many times the middle third the last third holds. */
function growth(samples: readonly Sample[], of: (one: Sample) => number): number {
  const third = Math.floor(samples.length / 3);
  return mean(samples.slice(2 * third).map(of)) / mean(samples.slice(third, 2 * third).map(of));
}

await live(async (life) => {
  process.env.DATABASE_URL = await openLarge(life);
  life.endWith(() => database().$disconnect());
  const app = await serveApp(process.env.DATABASE_URL, life);
  const people = await addPeople(USERS, app.secret);
  life.endWith(people.remove);
  const { webhookId, cookies } = people;
  const saveStockLot = app.actionId("saveStockLot");
  const kinds = await requestKinds({ address: app.address, webhookId, saveStockLot });
  console.log(`${machine()} · ${USERS} users, ${THINK_SECONDS} s of thinking, ${MINUTES} minutes\n`);
  console.log("| minute | resident | heap |\n| --- | --- | --- |");
  const since = performance.now();
  const samples: Sample[] = [];
  const load = runLoad({
    address: app.address,
    ...{ cookies, kinds, seconds: MINUTES * 60, thinkSeconds: THINK_SECONDS },
  });
  while (performance.now() - since < MINUTES * 60_000) {
    await pause(SAMPLE_MS, undefined, { signal: life.stopping });
    const one = await sample(app, since);
    samples.push(one);
    console.log(`| ${one.minute.toFixed(1)} | ${one.resident.toFixed(0)} MB | ${one.heap.toFixed(0)} MB |`);
  }
  const timings = await load;
  const wrong = timings.filter(({ error }) => error !== null).length;
  const grown = {
    resident: growth(samples, (one) => one.resident),
    heap: growth(samples, (one) => one.heap),
  };
  console.log(
    `\n${timings.length} requests, ${wrong} wrong; last third to the middle one: resident ${grown.resident.toFixed(2)}, heap ${grown.heap.toFixed(2)}, at most ${MOST_GROWTH}`,
  );
  return grown.resident <= MOST_GROWTH && grown.heap <= MOST_GROWTH ? 0 : 1;
}, 1);
