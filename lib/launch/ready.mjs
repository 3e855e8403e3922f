import { readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { refusalOfNode } from "./nodeVersion.mjs";
import { arePackagesInstalled, installPackages } from "./packages.mjs";

/** Makes sure of Node and of the packages, lets TypeScript be imported, then runs `module` beside this file. */
export async function runWhenReady(module) {
  const folder = fileURLToPath(new URL("../..", import.meta.url));
  const { engines } = JSON.parse(readFileSync(join(folder, "package.json"), "utf8"));
  stopAt(refusalOfNode(process.version, engines.node));
  process.chdir(folder);
  if (!arePackagesInstalled(folder)) {
    console.log("Installing the packages of the lock file …");
    if (!installPackages(folder))
      stopAt("The packages could not be installed: npm's message is above. Mend that and start again.");
  }
  const { register } = await import("tsx/esm/api");
  register();
  await import(module);
}

function stopAt(refusal) {
  if (refusal === undefined) return;
  console.error(refusal);
  process.exit(1);
}
