import { join } from "node:path";
import { wipePlace } from "../embedded/place";
import { startEmbedded } from "../embedded/startEmbedded";
import { stateFolder } from "../folders";
import type { Life } from "../live";

/** A throwaway PostgreSQL, or that of TEST_DATABASE_URL. @returns The address of its database of a name. */
export async function openTestServer(life: Life): Promise<(name: string) => string> {
  const own = process.env.TEST_DATABASE_URL;
  if (own) return (name) => Object.assign(new URL(own), { pathname: `/${name}` }).href;
  const folder = join(stateFolder, "test-database");
  wipePlace(folder);
  const server = await startEmbedded(folder, { durable: false });
  life.endWith(async () => {
    await server.stop();
    wipePlace(folder);
  });
  return server.url;
}
