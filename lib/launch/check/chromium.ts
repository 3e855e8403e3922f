import { spawnSync } from "node:child_process";
import { existsSync } from "node:fs";

const PROGRAM = "/usr/bin/chromium";

/** Makes sure of the browser, from Debian's packages where this account may. @returns Why there is none. */
export function lackOfChromium(): string | undefined {
  if (existsSync(PROGRAM)) return undefined;
  if (process.getuid?.() === 0) {
    console.log("Installing Debian's chromium for the browser tests …");
    aptGet("update");
    aptGet("install", "--yes", "--no-install-recommends", "chromium", "fonts-dejavu-core");
  }
  if (existsSync(PROGRAM)) return undefined;
  return `The browser tests need ${PROGRAM}: install Debian's packages chromium and fonts-dejavu-core.`;
}

function aptGet(...args: string[]): void {
  spawnSync("apt-get", ["-qq", ...args], {
    env: { ...process.env, DEBIAN_FRONTEND: "noninteractive" },
    stdio: ["ignore", "ignore", "inherit"],
  });
}
