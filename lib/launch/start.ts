import { mkdirSync } from "node:fs";
import { join } from "node:path";
import { build, generateClient, isBuilt } from "./build";
import { claim } from "./claim";
import { startEmbedded } from "./embedded/startEmbedded";
import { explain } from "./explain";
import { isEmpty, makeDatabase, seedDemo } from "./fillDatabase";
import { stateFolder } from "./folders";
import { migrate } from "./migrate";
import { refuseBusyPort } from "./port";
import { Refusal } from "./refusal";
import { readSettings, type Settings } from "./settings";
import { startWeb } from "./web";
import { firstAdminOrSignIns } from "./welcome";

/** What was started and must be stopped, the last first. */
const started: (() => Promise<void> | void)[] = [];
const stopping = new AbortController();

async function start(settings: Settings): Promise<void> {
  mkdirSync(stateFolder, { recursive: true });
  started.push(claim(stateFolder));
  await refuseBusyPort(settings.host, settings.port);
  if (!isBuilt()) {
    say("Building the web application (once, and again when its sources change) …");
    await generateClient(stopping.signal);
    await build(stopping.signal);
  }
  const database = settings.externalDatabase
    ? await useExternal(settings.externalDatabase, settings.demo)
    : await useEmbedded(settings.demo);
  stopping.signal.throwIfAborted();
  say("Starting the web server …");
  const web = await startWeb(settings, database.url);
  started.push(web.stop);
  say(`\nEbbline runs at ${settings.address}`);
  say(await firstAdminOrSignIns(database.url, settings));
  say("Ctrl-C stops it.");
  await Promise.race([
    askedToStop(),
    web.ended.then(() => fail("The web server ended by itself; what it said is above.")),
    database.ended.then(() =>
      fail(`The database ended by itself; its log is ${database.log}. Start Ebbline again.`),
    ),
  ]);
}

async function useEmbedded(demo: boolean) {
  say("Starting the database …");
  const server = await startEmbedded(join(stateFolder, "database"));
  started.push(server.stop);
  stopping.signal.throwIfAborted();
  // The demonstration and a plant's own data never share a database, so trying one leaves the other alone.
  const url = await makeDatabase(server.url, demo ? "ebbline_demo" : "ebbline", async (fresh) => {
    if (demo) await seed(fresh);
  });
  return { url, log: server.log, ended: server.ended };
}

async function useExternal(url: string, demo: boolean) {
  say("Updating the database of DATABASE_URL …");
  await migrate(url);
  if (demo && (await isEmpty(url))) await seed(url);
  return { url, log: "", ended: new Promise<never>(() => undefined) };
}

async function seed(url: string): Promise<void> {
  say("Writing the demonstration company (once) …");
  await seedDemo(url, stopping.signal);
}

function askedToStop(): Promise<void> {
  return new Promise((resolve) => {
    if (stopping.signal.aborted) resolve();
    stopping.signal.addEventListener("abort", () => resolve());
  });
}

function fail(reason: string): never {
  throw new Refusal(reason);
}

function say(line: string): void {
  if (line) console.log(line);
}

async function stopAll(): Promise<void> {
  for (const stop of started.splice(0).reverse()) await stop();
}

for (const name of ["SIGINT", "SIGTERM", "SIGHUP"] as const) process.on(name, () => stopping.abort());
let status = 0;
try {
  await start(readSettings(process.env));
} catch (error) {
  if (!stopping.signal.aborted) {
    console.error(explain(error));
    status = 1;
  }
}
try {
  if (stopping.signal.aborted) say("Stopping …");
  await stopAll();
} catch (error) {
  console.error(explain(error));
  status = 1;
}
process.exit(status);
