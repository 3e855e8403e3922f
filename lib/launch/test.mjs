import { spawnSync } from "node:child_process";
import { existsSync, mkdirSync, readFileSync } from "node:fs";

const report = ".ebbline/test-report.json";
const run = (command, args) => spawnSync(command, args, { stdio: "inherit" }).status ?? 1;

if (!existsSync("node_modules/vitest") && run("npm", ["ci", "--no-audit", "--no-fund"]) !== 0) {
  console.error("The packages could not be installed; npm's message is above.");
  process.exit(1);
}
mkdirSync(".ebbline", { recursive: true });
const status = run(process.execPath, [
  "node_modules/vitest/vitest.mjs",
  "run",
  "--reporter=default",
  "--reporter=json",
  `--outputFile.json=${report}`,
]);
const { numPassedTests, numFailedTests } = JSON.parse(readFileSync(report, "utf8"));
console.log(`${numPassedTests} passed, ${numFailedTests} failed`);
process.exit(status);
