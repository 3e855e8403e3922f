import { defineConfig } from "@playwright/test";
import { chromiumProgram } from "@/lib/launch/check/chromium";

const baseURL = process.env.EBBLINE_TEST_ADDRESS ?? "http://127.0.0.1:3000";

export default defineConfig({
  testDir: ".",
  outputDir: process.env.EBBLINE_TEST_RESULTS ?? "../../test-results",
  fullyParallel: false,
  workers: 1,
  forbidOnly: true,
  retries: 0,
  timeout: 60_000,
  expect: { timeout: 10_000 },
  reporter: [
    ["list"],
    ["json", { outputFile: process.env.EBBLINE_TEST_REPORT ?? "../../.ebbline/browser-report.json" }],
  ],
  use: {
    baseURL,
    locale: "en-GB",
    timezoneId: "Europe/Berlin",
    viewport: { width: 1440, height: 900 },
    // A trace copies the page at every step: of large tables that costs more than the journey.
    trace: process.env.EBBLINE_TEST_TRACE ? "retain-on-failure" : "off",
    screenshot: "only-on-failure",
    launchOptions: {
      executablePath: chromiumProgram(),
      args: [
        "--no-sandbox",
        "--disable-dev-shm-usage",
        "--disable-background-networking",
        "--disable-component-update",
        // There is no graphics card, and imitating one takes a tenth of the machine.
        "--disable-gpu",
        "--disable-software-rasterizer",
      ],
    },
  },
});
