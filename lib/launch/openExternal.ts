import { openToApplication } from "./appAccount";
import { isEmpty, seedDemo } from "./fillDatabase";
import { migrate } from "./migrate";
import type { Settings } from "./settings";

const ONE_ACCOUNT =
  "The application uses the account that owns the tables, so only its own rules keep the audit as it is; DATABASE_OWNER_URL parts the two (README).";

/** A database as its owner and as the application reach it. */
export interface OpenedDatabase {
  /** For its owner, who migrates and fills it. */
  readonly url: string;
  /** For the application, which owns nothing of it. */
  readonly appUrl: string;
}

/** Brings a PostgreSQL of one's own up to this release, fills an empty one with the demonstration where that is served. */
export async function openExternal(
  { externalDatabase: appUrl = "", ownerDatabase, demo }: Settings,
  signal: AbortSignal,
): Promise<OpenedDatabase> {
  const url = ownerDatabase ?? appUrl;
  console.log("Updating the database of DATABASE_URL …");
  await migrate(url);
  if (demo && (await isEmpty(url))) {
    console.log("Writing the demonstration company (once) …");
    await seedDemo(url, signal);
  }
  if (ownerDatabase) await openToApplication(url, appUrl);
  else console.log(ONE_ACCOUNT);
  return { url, appUrl };
}
