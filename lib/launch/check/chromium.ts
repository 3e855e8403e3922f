import { spawnSync } from "node:child_process";
import { existsSync } from "node:fs";

/** The browser without a window costs half of what the whole one does, and draws the same pages. */
const PROGRAMS = ["/usr/bin/chromium-headless-shell", "/usr/bin/chromium"];

/** The browser the journeys are walked with. */
export function chromiumProgram(): string | undefined {
  return PROGRAMS.find((program) => existsSync(program));
}

/** Makes sure of the browser, from Debian's packages where this account may. @returns Why there is none. */
export function lackOfChromium(): string | undefined {
  if (chromiumProgram()) return undefined;
  if (process.getuid?.() === 0) {
    console.log("Installing Debian's chromium for the browser tests …");
    aptGet("update");
    aptGet("install", "--yes", "--no-install-recommends", "chromium-headless-shell", "fonts-dejavu-core");
  }
  if (chromiumProgram()) return undefined;
  return `The browser tests need ${PROGRAMS.join(" or ")}: install Debian's packages chromium-headless-shell and fonts-dejavu-core.`;
}

function aptGet(...args: string[]): void {
  spawnSync("apt-get", ["-qq", ...args], {
    env: { ...process.env, DEBIAN_FRONTEND: "noninteractive" },
    stdio: ["ignore", "ignore", "inherit"],
  });
}
