import { existsSync, readFileSync } from "node:fs";

export interface Tally {
  readonly passed: number;
  readonly failed: number;
}

export function add(one: Tally, other: Tally): Tally {
  return { passed: one.passed + other.passed, failed: one.failed + other.failed };
}

/** One check that either holds or not. */
export function once(passed: boolean): Tally {
  return passed ? { passed: 1, failed: 0 } : { passed: 0, failed: 1 };
}

interface UnitReport {
  readonly numPassedTests: number;
  readonly numFailedTests: number;
  readonly testResults: readonly { readonly status: string; readonly assertionResults: readonly unknown[] }[];
}

/** Counts Vitest's report; a file that could not be loaded is one failure, and so is a missing report. */
export function tallyOfTests(file: string): Tally {
  if (!existsSync(file)) return once(false);
  const report: UnitReport = JSON.parse(readFileSync(file, "utf8"));
  const unloaded = report.testResults.filter(
    ({ status, assertionResults }) => status === "failed" && assertionResults.length === 0,
  );
  return { passed: report.numPassedTests, failed: report.numFailedTests + unloaded.length };
}

interface BrowserReport {
  readonly stats: { readonly expected: number; readonly unexpected: number; readonly flaky: number };
  readonly errors: readonly unknown[];
}

/** Counts Playwright's report; a test that passed only at a second try has failed. */
export function tallyOfJourneys(file: string): Tally {
  if (!existsSync(file)) return once(false);
  const { stats, errors }: BrowserReport = JSON.parse(readFileSync(file, "utf8"));
  return { passed: stats.expected, failed: stats.unexpected + stats.flaky + errors.length };
}
