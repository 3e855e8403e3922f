import { spawnSync } from "node:child_process";
import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";

/** Whether each package of the lock file is installed in its version; those for other platforms aside. */
export function arePackagesInstalled(folder) {
  const note = join(folder, "node_modules", ".package-lock.json");
  if (!existsSync(note)) return false;
  const installed = readPackages(note);
  return Object.entries(readPackages(join(folder, "package-lock.json"))).every(([path, wanted]) => {
    if (path === "") return true;
    const found = installed[path];
    return found ? found.version === wanted.version : wanted.optional === true;
  });
}

/** Installs exactly what the lock file says. Returns whether it went well. */
export function installPackages(folder) {
  const { status } = spawnSync("npm", ["ci", "--include=dev"], {
    cwd: folder,
    stdio: "inherit",
    shell: process.platform === "win32",
  });
  return status === 0;
}

function readPackages(file) {
  return JSON.parse(readFileSync(file, "utf8")).packages;
}
