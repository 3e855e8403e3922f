import { rmSync } from "node:fs";
import { join } from "node:path";
import { stateFolder } from "../folders";
import type { Life } from "../live";
import { runNode } from "../run";
import { type Tally, tallyOfTests } from "./tally";

/** Runs all tests but those of the browser. */
export async function runTests(server: string, { stopping }: Life): Promise<Tally> {
  const report = join(stateFolder, "test-report.json");
  rmSync(report, { force: true });
  await runNode(
    [
      "node_modules/vitest/vitest.mjs",
      "run",
      "--reporter=default",
      "--reporter=json",
      `--outputFile.json=${report}`,
    ],
    { env: { EBBLINE_TEST_DATABASE_URL: server }, signal: stopping },
  );
  return tallyOfTests(report);
}
