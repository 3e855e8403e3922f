import { mkdirSync } from "node:fs";
import { join } from "node:path";
import { build, generateClient, isBuilt } from "./build";
import { claim } from "./claim";
import { startEmbedded } from "./embedded/startEmbedded";
import { isEmpty, makeDatabase, seedDemo } from "./fillDatabase";
import { databaseName, stateFolder } from "./folders";
import { type Life, live } from "./live";
import { migrate } from "./migrate";
import { refuseBusyPort } from "./port";
import { Refusal } from "./refusal";
import { readSettings } from "./settings";
import { startWeb } from "./web";
import { firstAdminOrSignIns } from "./welcome";

interface Database {
  readonly url: string;
  /** Fails when the database ends while Ebbline runs; never settles otherwise. */
  readonly lost: Promise<never>;
}

await live(async (life) => {
  const settings = readSettings(process.env);
  mkdirSync(stateFolder, { recursive: true });
  life.endWith(claim(stateFolder));
  await refuseBusyPort(settings.host, settings.port);
  await buildWhenChanged(life);
  const open = settings.externalDatabase ? openExternal(settings.externalDatabase) : openEmbedded;
  const database = await open(settings.demo, life);
  life.stopping.throwIfAborted();
  console.log("Starting the web server …");
  const web = await startWeb(settings, database.url);
  life.endWith(web.stop);
  console.log(`\nEbbline runs at ${settings.address}`);
  for (const line of await firstAdminOrSignIns(database.url, settings)) console.log(line);
  console.log("Ctrl-C stops it.");
  const webLost = web.ended.then(() => lost("The web server ended by itself; what it said is above."));
  await Promise.race([askedToStop(life.stopping), webLost, database.lost]);
  return 0;
}, 0);

async function buildWhenChanged({ stopping }: Life): Promise<void> {
  if (isBuilt()) return;
  console.log("Building the web application (once, and again when its sources change) …");
  await generateClient(stopping);
  await build(stopping);
}

async function openEmbedded(demo: boolean, life: Life): Promise<Database> {
  console.log("Starting the database …");
  const server = await startEmbedded(join(stateFolder, "database"));
  life.endWith(server.stop);
  const url = await makeDatabase(server.url, databaseName(demo), async (fresh) => {
    if (demo) await seed(fresh, life);
  });
  return {
    url,
    lost: server.ended.then(() =>
      lost(`The database ended by itself; its log is ${server.log}. Start Ebbline again.`),
    ),
  };
}

function openExternal(url: string) {
  return async (demo: boolean, life: Life): Promise<Database> => {
    console.log("Updating the database of DATABASE_URL …");
    await migrate(url);
    if (demo && (await isEmpty(url))) await seed(url, life);
    return { url, lost: new Promise(() => undefined) };
  };
}

async function seed(url: string, { stopping }: Life): Promise<void> {
  console.log("Writing the demonstration company (once) …");
  await seedDemo(url, stopping);
}

function askedToStop(stopping: AbortSignal): Promise<void> {
  return new Promise((resolve) => {
    if (stopping.aborted) resolve();
    stopping.addEventListener("abort", () => resolve());
  });
}

function lost(reason: string): never {
  throw new Refusal(reason);
}
