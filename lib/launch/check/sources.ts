import { build, isBuilt } from "../build";
import type { Life } from "../live";
import { Refusal } from "../refusal";
import { runNode } from "../run";
import { add, once, type Tally } from "./tally";

const CHECKS = [
  { name: "types", args: ["node_modules/typescript/bin/tsc"] },
  {
    name: "types of the core, which knows no browser and no Node",
    args: ["node_modules/typescript/bin/tsc", "-p", "lib"],
  },
  { name: "style", args: ["node_modules/@biomejs/biome/bin/biome", "ci", "."] },
];

/** Builds the app, then checks types and style; each counts once. */
export async function checkSources({ stopping }: Life): Promise<Tally> {
  // First, since the build writes types of the routes.
  let tally = report("build", isBuilt() || (await builds(stopping)));
  for (const { name, args } of CHECKS)
    tally = add(tally, report(name, await runNode(args, { signal: stopping })));
  return tally;
}

async function builds(stopping: AbortSignal): Promise<boolean> {
  try {
    await build(stopping);
    return true;
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    console.error(error.message);
    return false;
  }
}

function report(name: string, passed: boolean): Tally {
  console.log(`${passed ? "passed" : "FAILED"}: ${name}`);
  return once(passed);
}
