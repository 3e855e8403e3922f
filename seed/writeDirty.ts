import { mkdir, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { dirtySet, dirtySite } from "@/seed/dirtyFiles/dirtySet";
import { dirtyNotices } from "@/seed/dirtyFiles/notices";
import { showcase } from "@/seed/scenarios/showcase/showcase";

/** Writes the dirty import set into a folder, with the answer key beside each file. */
const folder = process.argv[2];
if (folder === undefined) throw new Error("Name the folder to write into: npx tsx seed/writeDirty.ts FOLDER");

await mkdir(folder, { recursive: true });
const tables = showcase();
const survey = dirtySite(tables).filter(({ register }) => register === "axes");
for (const { bytes, ...key } of [...dirtySet(tables), ...survey, ...dirtyNotices()]) {
  await writeFile(join(folder, key.name), bytes);
  await writeFile(join(folder, `${key.name}.key.json`), `${JSON.stringify(key, null, 1)}\n`);
}
