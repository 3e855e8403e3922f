import { spawnSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { projectFolder } from "./folders";
import { licencesOf } from "./licences";

interface Advisory {
  readonly name: string;
  readonly severity: string;
  readonly range: string;
}

/** What npm's register says is wrong with the packages as locked; null when it cannot be asked from here. */
function askAdvisories(): Advisory[] | null {
  const { stdout } = spawnSync("npm", ["audit", "--json"], {
    cwd: projectFolder,
    encoding: "utf8",
    shell: true,
  });
  try {
    const { vulnerabilities } = JSON.parse(stdout) as { vulnerabilities?: Record<string, Advisory> };
    return vulnerabilities ? Object.values(vulnerabilities) : null;
  } catch {
    return null;
  }
}

const lock = JSON.parse(readFileSync(join(projectFolder, "package-lock.json"), "utf8"));
const licences = licencesOf(lock.packages);
console.log("Licences of the packages, from package-lock.json:");
for (const { licence, packages, isShipped, standing } of licences) {
  const which = standing === "look" ? `: ${packages.join(", ")}` : "";
  console.log(`  ${standing} ${isShipped ? "shipped" : "tests only"} ${licence}, ${packages.length}${which}`);
}
const advisories = askAdvisories();
if (advisories === null)
  console.log("Known advisories: not asked. The register that keeps them does not answer from this machine.");
else {
  console.log(`Known advisories: ${advisories.length}`);
  for (const { name, severity, range } of advisories) console.log(`  ${severity}: ${name} ${range}`);
}
