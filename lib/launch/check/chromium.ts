import { spawn } from "node:child_process";
import { once } from "node:events";
import { existsSync } from "node:fs";

/** The browser without a window costs half of what the whole one does, and draws the same pages. */
const WITHOUT_WINDOW = "/usr/bin/chromium-headless-shell";
const WHOLE = "/usr/bin/chromium";

/** The browser the journeys are walked with. */
export const chromiumProgram = (): string => (existsSync(WITHOUT_WINDOW) ? WITHOUT_WINDOW : WHOLE);

/** Makes sure of the browser, from Debian's packages where this account may. @returns Why there is none. */
export async function lackOfChromium(): Promise<string | undefined> {
  if (existsSync(chromiumProgram())) return undefined;
  if (process.getuid?.() === 0) {
    console.log("Installing Debian's chromium for the browser tests …");
    await aptGet("update");
    await aptGet(
      "install",
      "--yes",
      "--no-install-recommends",
      "chromium-headless-shell",
      "fonts-dejavu-core",
    );
  }
  if (existsSync(chromiumProgram())) return undefined;
  return `The browser tests need ${WITHOUT_WINDOW} or ${WHOLE}: install Debian's packages chromium-headless-shell and fonts-dejavu-core.`;
}

async function aptGet(...args: string[]): Promise<void> {
  const run = spawn("apt-get", ["-qq", ...args], {
    env: { ...process.env, DEBIAN_FRONTEND: "noninteractive" },
    stdio: ["ignore", "ignore", "inherit"],
  });
  await once(run, "close").catch((error) => console.error(`apt-get did not run: ${error.message}`));
}
