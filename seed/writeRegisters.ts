import { mkdir, writeFile } from "node:fs/promises";
import { fileURLToPath } from "node:url";
import { registerFiles } from "@/seed/registerFiles/registerFiles";
import { showcase } from "@/seed/scenarios/showcase/showcase";

const folder = fileURLToPath(new URL("registers/", import.meta.url));

await mkdir(folder, { recursive: true });
for (const { name, bytes } of await registerFiles(showcase())) {
  await writeFile(`${folder}${name}`, bytes);
  console.log(`${name}: ${bytes.length.toLocaleString("en-GB")} bytes`);
}
