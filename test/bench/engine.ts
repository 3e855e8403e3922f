import { availableParallelism, loadavg, totalmem } from "node:os";
import { database } from "@/lib/data/client";
import { live } from "@/lib/launch/live";
import { readBareAlone } from "@/test/bench/bareReading";
import { openLarge } from "@/test/bench/largeDatabase";
import { DRAWS_OF_REFRESH, measureDraws, measureRefresh, measureSteps } from "@/test/bench/refresh";
import { measureSpreadsheet } from "@/test/bench/spreadsheet";
import { type Measured, printTable } from "@/test/bench/table";

const AS_OF = "2026-11-30";
const WINDOW = `WHERE "happenedAt" >= DATE '2021-11-30' AND "happenedAt" < DATE '2026-12-01' AND "setAside" IS NULL`;
const MOST_MEGABYTES = 1000;

interface Compared {
  readonly name: string;
  /** Seconds. */
  readonly value: number;
  readonly floor: number;
  readonly most: number;
}

function compared({ name, value, floor, most }: Compared): Measured {
  const seconds = (time: number) => `${time.toPrecision(3)} s`;
  return {
    ...{ name, value: seconds(value), floor: seconds(floor), ratio: (value / floor).toPrecision(3) },
    ...{ target: `at most ${most}`, met: value / floor <= most },
  };
}

function memory(): Measured {
  const peak = process.resourceUsage().maxRSS / 1024;
  return {
    ...{ name: "most memory held (RSS)", value: `${peak.toFixed(0)} MB`, floor: "", ratio: "" },
    ...{ target: `under ${MOST_MEGABYTES} MB`, met: peak < MOST_MEGABYTES },
  };
}

async function measureAll(url: string): Promise<Measured[]> {
  const counted = await readBareAlone(url, WINDOW);
  const refresh = await measureRefresh(AS_OF);
  const every = await readBareAlone(url, "");
  const steps = await measureSteps(AS_OF);
  const draws = await measureDraws(AS_OF);
  return [
    compared({
      name: `refresh, against fetching the ${every.rows} rows its queries go over`,
      ...{ value: refresh, floor: every.seconds, most: 2 },
    }),
    compared({
      name: `the same less its ${DRAWS_OF_REFRESH} draws, timed apart: read, compute, write`,
      ...{ value: refresh - draws.few, floor: every.seconds, most: 2 },
    }),
    compared({
      name: `refresh, against fetching the ${counted.rows} rows left with five years of events`,
      ...{ value: refresh, floor: counted.seconds, most: 2 },
    }),
    compared({
      name: `after a change of stock, median of ${steps.length}, against a refresh`,
      ...{ value: median(steps), floor: refresh, most: 1 / 50 },
    }),
    compared({
      name: "after a change of stock, the slowest, against a refresh",
      ...{ value: Math.max(...steps), floor: refresh, most: 1 / 50 },
    }),
    compared({
      name: "1,000 draws of the ranking, against a refresh",
      ...{ value: draws.many, floor: refresh, most: 10 },
    }),
    memory(),
    await measureSpreadsheet(),
  ];
}

function median(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;
}

await live(async (life) => {
  process.env.DATABASE_URL = await openLarge(life);
  life.endWith(() => database().$disconnect());
  const load = () =>
    loadavg()
      .map((value) => value.toFixed(1))
      .join(" ");
  const before = load();
  const measured = await measureAll(process.env.DATABASE_URL);
  console.log(
    `${new Date().toISOString().slice(0, 10)} · Node ${process.version} · ${availableParallelism()} cores · ` +
      `${Math.round(totalmem() / 2 ** 30)} GB · load before ${before}, after ${load()}`,
  );
  printTable(measured);
  return measured.every(({ met }) => met !== false) ? 0 : 1;
}, 1);
