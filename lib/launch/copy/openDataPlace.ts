import { mkdirSync } from "node:fs";
import { join } from "node:path";
import { runningEmbedded } from "../embedded/runningEmbedded";
import { startEmbedded } from "../embedded/startEmbedded";
import { databaseName, stateFolder } from "../folders";
import type { Life } from "../live";
import { readSettings } from "../settings";

/** Where the data of `npm start` are, under the same settings. */
export interface DataPlace {
  readonly url: string;
  /** Of an embedded server: address of its database of a name, and the name of the one in use. */
  readonly embedded?: { readonly url: (name: string) => string; readonly name: string };
}

/** The database `npm start` works on, whether it runs now or not; an embedded one is started for the while. */
export async function openDataPlace(life: Life): Promise<DataPlace> {
  const { externalDatabase, ownerDatabase, demo } = readSettings(process.env);
  if (externalDatabase) return { url: ownerDatabase ?? externalDatabase };
  const folder = join(stateFolder, "database");
  const url = runningEmbedded(folder) ?? (await started(folder, life));
  const name = databaseName(demo);
  return { url: url(name), embedded: { url, name } };
}

async function started(folder: string, life: Life): Promise<(name: string) => string> {
  mkdirSync(stateFolder, { recursive: true });
  const server = await startEmbedded(folder);
  life.endWith(server.stop);
  return server.url;
}
