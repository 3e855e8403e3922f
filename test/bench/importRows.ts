import { execFileSync } from "node:child_process";
import { createReadStream, mkdtempSync, rmSync } from "node:fs";
import { open, stat } from "node:fs/promises";
import { loadavg, tmpdir } from "node:os";
import { join } from "node:path";
import { monitorEventLoopDelay } from "node:perf_hooks";
import { pipeline } from "node:stream/promises";
import { parse } from "csv-parse";
import { Client } from "pg";
import { from, to } from "pg-copy-streams";
import { database } from "@/lib/data/client";
import { commitImport, stageImport, undoImport } from "@/lib/data/import";
import { readImport } from "@/lib/data/importView";
import { makeActor } from "@/test/support/actors";
import { freshDatabase } from "@/test/support/database";

/**
 * How long files are taken over: a million events from CSV, end to end, beside the bare COPY of the same rows and the bare
 * parse of the same file; and the preview of 300,000 rows of 200 columns with the memory it takes. Each part runs in a
 * process of its own, so that its memory is its own.
 */

const EVENTS = Number(process.env.EBBLINE_BENCH_EVENTS ?? 1_000_000);
const WIDE_ROWS = Number(process.env.EBBLINE_BENCH_WIDE_ROWS ?? 300_000);
const COLUMNS = 200;
const LINES = 40;
const MACHINES = 10;
const PARTS = 200;
const MEGABYTE = 1024 * 1024;

const say = (line: string) => process.stdout.write(`${line}\n`);
const load = () => loadavg()[0]?.toFixed(1);

async function seconds(run: () => Promise<unknown>): Promise<number> {
  const begun = performance.now();
  await run();
  return (performance.now() - begun) / 1000;
}

/** Sites, lines, machines and parts the rows speak of. */
async function addPlaces(): Promise<void> {
  const site = await database().site.create({
    data: { code: "OST", name: "Ostrowka", country: "PL", timeZone: "Europe/Warsaw", currency: "PLN" },
  });
  for (let line = 0; line < LINES; line += 1) {
    const { id } = await database().line.create({
      data: { siteId: site.id, code: `OST-${line}`, name: `Line ${line}` },
    });
    await database().machine.createMany({
      data: Array.from({ length: MACHINES }, (_, machine) => ({
        lineId: id,
        code: `M${machine}`,
        name: `Machine ${machine}`,
      })),
    });
  }
  await database().part.createMany({
    data: Array.from({ length: PARTS }, (_, part) => ({
      ...{ maker: "Tarnholt Motion", number: `TM-HR-${1000 + part}`, itemClass: "drive" as const },
      description: "Drive",
    })),
  });
}

const HEADER =
  "Site;Line;Machine;Maker;Part number;Item class;Kind;Date;Downtime h;Waiting h;Spare at hand;Reference;Source;Text";

function eventRow(row: number): string {
  const two = (value: number) => String(value).padStart(2, "0");
  const day = `20${two(10 + (row % 16))}-${two(1 + (row % 12))}-${two(1 + (row % 28))} ${two(row % 24)}:${two(row % 60)}`;
  const hours = `${4 + (row % 40)},${row % 10}`;
  const place = `OST;OST-${row % LINES};M${row % MACHINES};Tarnholt Motion;TM-HR-${1000 + (row % PARTS)}`;
  return `${place};drive;failure;${day};${hours};${row % 3},5;yes;WO-${1_000_000 + row};work order;Drive exchanged after overcurrent`;
}

async function writeFile(path: string, rows: number, filling: number): Promise<number> {
  const file = await open(path, "w");
  const rest = (cell: (column: number) => string) =>
    Array.from({ length: filling }, (_, column) => `;${cell(column)}`).join("");
  let text = `${HEADER}${rest((column) => `Extra ${column}`)}\n`;
  for (let row = 0; row < rows; row += 1) {
    text += `${eventRow(row)}${rest((column) => String((row * 7 + column) % 100_000))}\n`;
    if (text.length < 4 * MEGABYTE) continue;
    await file.write(text);
    text = "";
  }
  await file.write(text);
  await file.close();
  return (await stat(path)).size;
}

async function barelyParsed(path: string): Promise<number> {
  let rows = 0;
  const parser = createReadStream(path).pipe(parse({ delimiter: ";" }));
  return seconds(async () => {
    for await (const _ of parser) rows += 1;
    if (rows !== EVENTS + 1) throw new Error(`The parser gave ${rows} rows`);
  });
}

/** COPY of the very rows that were loaded into the same table, emptied before; indexes and foreign keys as they are. */
async function barelyCopied(url: string, path: string): Promise<number> {
  const client = new Client({ connectionString: url });
  await client.connect();
  const { createWriteStream } = await import("node:fs");
  await pipeline(client.query(to(`COPY "Event" TO STDOUT`)), createWriteStream(path));
  await client.query(`DELETE FROM "EventMatch"; TRUNCATE "Event" CASCADE`);
  await client.query("CHECKPOINT");
  const took = await seconds(() =>
    pipeline(createReadStream(path), client.query(from(`COPY "Event" FROM STDIN`))),
  );
  const { rows } = await client.query<{ count: string }>(`SELECT count(*) FROM "Event"`);
  if (Number(rows[0]?.count) !== EVENTS) throw new Error(`COPY wrote ${rows[0]?.count} rows`);
  await client.end();
  return took;
}

/** Reads to the end: asks as the page does until the preview is there. */
async function untilRead(actor: Parameters<typeof readImport>[0], batchId: string) {
  for (;;) {
    const view = await readImport(actor, batchId, []);
    if (view?.staged) return view.staged;
    if (view?.progress?.state !== "reading") throw new Error(`Reading: ${JSON.stringify(view?.progress)}`);
  }
}

async function handIn(actor: Parameters<typeof readImport>[0], path: string) {
  const bytes = createReadStream(path) as AsyncIterable<Uint8Array>;
  const staged = await stageImport(actor, { register: "events", fileName: "long.csv", bytes });
  if (!staged.ok) throw new Error(staged.error.reason);
  return staged.value.batchId;
}

const memory = () => Math.round(process.resourceUsage().maxRSS / 1024);

async function eventsPart(folder: string): Promise<void> {
  const fresh = await freshDatabase("importRows");
  try {
    await addPlaces();
    const actor = await makeActor("planner");
    const path = join(folder, "events.csv");
    const size = await writeFile(path, EVENTS, 0);
    say(`${EVENTS} events, ${Math.round(size / MEGABYTE)} MB of CSV, load ${load()}`);
    let batchId = "";
    const upload = await seconds(async () => {
      batchId = await handIn(actor, path);
    });
    const delay = monitorEventLoopDelay({ resolution: 5 });
    delay.enable();
    const reading = await seconds(() => untilRead(actor, batchId));
    delay.disable();
    const loading = await seconds(async () => {
      const loaded = await commitImport(actor, { batchId, leftOut: [] });
      if (!loaded.ok || loaded.value.added !== EVENTS) throw new Error(JSON.stringify(loaded));
    });
    const held = memory();
    const busy = Math.round(process.cpuUsage().user / 1e6);
    const copy = await barelyCopied(fresh.url, join(folder, "events.copy"));
    const parsing = await barelyParsed(path);
    const whole = upload + reading + loading;
    say(
      `upload ${upload.toFixed(1)} s, reading ${reading.toFixed(1)} s, loading ${loading.toFixed(1)} s: ${whole.toFixed(1)} s`,
    );
    say(
      `floor: COPY ${copy.toFixed(1)} s + parse ${parsing.toFixed(1)} s = ${(copy + parsing).toFixed(1)} s`,
    );
    say(`| events end to end | ${(whole / (copy + parsing)).toFixed(2)} × | at most 4 × |`);
    say(
      `longest wait of a page while it was read: ${Math.round(delay.max / 1e6)} ms, half of them ${Math.round(delay.percentile(50) / 1e6)} ms`,
    );
    say(
      `memory ${held} MB, ${busy} s of processor from the start of the process to the end of loading, load ${load()}`,
    );
    const back = await seconds(async () => {
      const undone = await undoImport(actor, { batchId });
      if (!undone.ok) throw new Error(undone.error.reason);
    });
    say(`taken back in ${back.toFixed(1)} s`);
  } finally {
    await fresh.close();
  }
}

async function wideUpload(folder: string, url: string): Promise<void> {
  process.env.DATABASE_URL = url;
  const actor = await makeActor("planner");
  say(`memory before the upload ${memory()} MB`);
  let batchId = "";
  const upload = await seconds(async () => {
    batchId = await handIn(actor, join(folder, "wide.csv"));
  });
  const reading = await seconds(async () => {
    const staged = await untilRead(actor, batchId);
    if (staged.totals.ok !== WIDE_ROWS) throw new Error(JSON.stringify(staged.totals));
  });
  say(`upload ${upload.toFixed(1)} s, memory ${memory()} MB, load ${load()}`);
  say(`| preview | ${reading.toFixed(1)} s | under 60 s |`);
  say(`| memory of the process, upload included | ${memory()} MB | under 500 MB |`);
}

async function widePart(folder: string): Promise<void> {
  const fresh = await freshDatabase("importWide");
  try {
    await addPlaces();
    const size = await writeFile(join(folder, "wide.csv"), WIDE_ROWS, COLUMNS - HEADER.split(";").length);
    say(`${WIDE_ROWS} rows of ${COLUMNS} columns, ${Math.round(size / MEGABYTE)} MB of CSV, load ${load()}`);
    alone("wide-upload", folder, fresh.url);
  } finally {
    await fresh.close();
  }
}

function alone(...rest: readonly string[]): void {
  const [, file = ""] = process.argv;
  execFileSync(process.execPath, [...process.execArgv, file, ...rest], { stdio: "inherit" });
}

const [, , part, given, url = ""] = process.argv;
if (part === "events") await eventsPart(given ?? "");
else if (part === "wide") await widePart(given ?? "");
else if (part === "wide-upload") await wideUpload(given ?? "", url);
else {
  const folder = mkdtempSync(join(tmpdir(), "ebbline-import-"));
  try {
    alone("events", folder);
    alone("wide", folder);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
process.exit(0);
