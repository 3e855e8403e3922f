import { existsSync } from "node:fs";
import { resolve } from "node:path";
import { openDataPlace } from "./copy/openDataPlace";
import { restoreFrom } from "./copy/restoreFrom";
import { dropDatabase, makeEmptyDatabase } from "./fillDatabase";
import { live } from "./live";
import { Refusal } from "./refusal";

await live(async (life) => {
  const file = process.argv[2];
  if (!file) throw new Refusal("Say from which file: npm run restore -- FILE");
  const path = resolve(file);
  if (!existsSync(path)) throw new Refusal(`There is no file ${path}.`);
  const { url, embedded } = await openDataPlace(life);
  const made = embedded ? await makeEmptyDatabase(embedded.url, embedded.name) : false;
  const manifest = await restoreFrom(url, path).catch(async (error: unknown) => {
    // A database left empty would be taken for one in use by the next start.
    if (embedded && made) await dropDatabase(embedded.url, embedded.name);
    throw error;
  });
  const rows = manifest.tables.reduce((sum, table) => sum + table.rows, 0);
  console.log(`Restored: ${rows} rows of ${manifest.tables.length} tables, as of ${manifest.madeAt}.`);
  console.log(`Hash of the content, read back from the database: ${manifest.hash}`);
  if (!manifest.withSecrets)
    console.log("The copy holds no passwords: npm start prints a link for a first administrator.");
  return 0;
}, 1);
