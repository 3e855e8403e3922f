import { live } from "./live";
import { openExternal } from "./openExternal";
import { Refusal } from "./refusal";
import { readSettings } from "./settings";
import { firstAdminOrSignIns } from "./welcome";

/** What comes before application processes are started by themselves: the database of DATABASE_URL made ready for them. */
await live(async ({ stopping }) => {
  const settings = readSettings(process.env);
  if (!settings.externalDatabase) throw new Refusal("Set DATABASE_URL to the database to make ready.");
  const { url } = await openExternal(settings, stopping);
  for (const line of await firstAdminOrSignIns(url, settings)) console.log(line);
  return 0;
}, 1);
