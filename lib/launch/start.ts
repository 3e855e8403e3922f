import { randomBytes } from "node:crypto";
import { mkdirSync } from "node:fs";
import { join } from "node:path";
import { asAccount, openToApplication } from "./appAccount";
import { build, generateClient, isBuilt } from "./build";
import { claim } from "./claim";
import { startEmbedded } from "./embedded/startEmbedded";
import { makeDatabase, seedDemo } from "./fillDatabase";
import { APP_ACCOUNT, databaseName, stateFolder } from "./folders";
import { keptText } from "./keptText";
import { type Life, live } from "./live";
import { type OpenedDatabase, openExternal } from "./openExternal";
import { refuseBusyPort } from "./port";
import { Refusal } from "./refusal";
import { readSettings, type Settings, unsafeAddress } from "./settings";
import { startWeb } from "./web";
import { firstAdminOrSignIns } from "./welcome";

interface Database extends OpenedDatabase {
  /** Fails when the database ends while Ebbline runs; never settles otherwise. */
  readonly lost: Promise<never>;
}

await live(async (life) => {
  const settings = readSettings(process.env);
  mkdirSync(stateFolder, { recursive: true });
  life.endWith(claim(stateFolder));
  await refuseBusyPort(settings.host, settings.port);
  await buildWhenChanged(life);
  const database = await (settings.externalDatabase ? openOwn : openEmbedded)(settings, life);
  life.stopping.throwIfAborted();
  console.log("Starting the web server …");
  const web = await startWeb(settings, database.appUrl);
  life.endWith(web.stop);
  console.log(`\nEbbline runs at ${settings.address}`);
  for (const line of await firstAdminOrSignIns(database.url, settings)) console.log(line);
  const warning = unsafeAddress(settings);
  if (warning) console.log(warning);
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

async function openEmbedded({ demo }: Settings, life: Life): Promise<Database> {
  console.log("Starting the database …");
  const server = await startEmbedded(join(stateFolder, "database"));
  life.endWith(server.stop);
  const url = await makeDatabase(server.url, databaseName(demo), async (fresh) => {
    if (!demo) return;
    console.log("Writing the demonstration company (once) …");
    await seedDemo(fresh, life.stopping);
  });
  const password = keptText(join(stateFolder, "database-password"), () =>
    randomBytes(24).toString("base64url"),
  );
  const appUrl = asAccount(url, APP_ACCOUNT, password);
  await openToApplication(url, appUrl);
  const ended = server.ended.then(() =>
    lost(`The database ended by itself; its log is ${server.log}. Start Ebbline again.`),
  );
  return { url, appUrl, lost: ended };
}

async function openOwn(settings: Settings, { stopping }: Life): Promise<Database> {
  return { ...(await openExternal(settings, stopping)), lost: new Promise(() => undefined) };
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
