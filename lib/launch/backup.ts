import { resolve } from "node:path";
import { openDataPlace } from "./copy/openDataPlace";
import { writeBackup } from "./copy/writeBackup";
import { live } from "./live";
import { Refusal } from "./refusal";

await live(async (life) => {
  const folder = process.argv[2];
  if (!folder) throw new Refusal("Say where to: npm run backup -- FOLDER");
  const { url } = await openDataPlace(life);
  const name = `ebbline-${new Date().toISOString().slice(0, 19).replaceAll(":", "-")}Z`;
  const { file, bytes, manifest } = await writeBackup(url, { folder: resolve(folder), name });
  const rows = manifest.tables.reduce((sum, table) => sum + table.rows, 0);
  console.log(`${file}\n${rows} rows of ${manifest.tables.length} tables, ${bytes} bytes, read back whole.`);
  console.log(`Hash of its content: ${manifest.hash}`);
  console.log("It holds password hashes and keys: keep it where only you can read it.");
  return 0;
}, 1);
