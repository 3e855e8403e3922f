import type { Import, Module } from "./sources";

/** Pure core, the lower first: a folder may import those before it. */
const ORDER = [
  "lib/kernel/",
  "lib/access/policy.ts",
  "lib/schema/",
  "lib/lifecycle/",
  "lib/reliability/",
  "lib/spares/",
  "lib/risk/",
  "lib/retrofit/",
  "lib/portfolio/",
  "lib/projects/",
  "lib/intake/",
  "lib/view/",
];

const CORE_PACKAGES = /^npm:(zod|decimal\.js|@stdlib\/.+)$/;
const TABLE_READERS = ["npm:csv-parse", "npm:fflate", "npm:saxen"];
/** A solver is a pure function too: a model in, a choice out. */
const SOLVER = "npm:highs";
const DATABASE_PACKAGES = /^npm:(@prisma\/.+|pg)$/;

/** Place in the core's order, or -1 outside it. */
export const coreRank = (path: string) => ORDER.findIndex((start) => path.startsWith(start));

const isIn = (path: string, ...starts: string[]) => starts.some((start) => path.startsWith(start));
const isComponent = (path: string) => path.includes("/_components/") || isIn(path, "app/_ui/");

type EdgeRule = (from: string, to: string, edge: Import) => boolean;

/** Each tells whether an import breaks it. */
export const edgeRules: Readonly<Record<string, EdgeRule>> = {
  "core is pure": (from, to) =>
    coreRank(from) >= 0 &&
    coreRank(to) < 0 &&
    !CORE_PACKAGES.test(to) &&
    !(isIn(from, "lib/intake/") && TABLE_READERS.includes(to)) &&
    !(isIn(from, "lib/portfolio/") && to === SOLVER),

  "core has an order": (from, to) => coreRank(from) >= 0 && coreRank(to) > coreRank(from),

  "Prisma only in data": (from, to) =>
    (isIn(to, "prisma/generated/") || DATABASE_PACKAGES.test(to)) &&
    !isIn(from, "lib/data/", "lib/launch/", "seed/", "prisma/"),

  // A type vanishes when compiled, so a part may know the shape of what it is handed.
  "components never read data": (from, to, { typeOnly }) =>
    isComponent(from) &&
    !typeOnly &&
    (isIn(to, "lib/data/", "lib/jobs/", "lib/reports/", "lib/launch/", "lib/env") ||
      (isIn(to, "lib/access/") && to !== "lib/access/policy.ts")),

  "shared parts know no page": (from, to) =>
    isIn(from, "app/_ui/") && isIn(to, "app/") && !isIn(to, "app/_ui/"),

  // Only the files directly in lib/data ask who is reading; what lies below serves them.
  "pages read through the files of lib/data": (from, to) =>
    isIn(from, "app/") && (/^lib\/data\/.+\//.test(to) || to === "lib/data/client.ts"),

  "lib never imports app": (from, to) => isIn(from, "lib/", "seed/") && isIn(to, "app/"),

  "nothing but launch and seed imports launch": (from, to) =>
    isIn(to, "lib/launch/") && !isIn(from, "lib/launch/", "seed/"),

  "the product never imports the demonstration or tests": (from, to) =>
    isIn(to, "seed/", "test/") && !isIn(from, "seed/", "lib/launch/") && !isIn(from, "app/sign-in/"),

  // Folders such as [code] and (workspace) are patterns in disguise, hence plain text.
  "a route keeps its parts": (from, to) => {
    const owner = /^(.*\/)(_components\/|actions\.ts$)/.exec(to)?.[1];
    return owner !== undefined && !from.startsWith(owner);
  },
};

/** Every import that breaks a rule, as "rule: from → to". */
export function breaches(modules: readonly Module[]): string[] {
  return modules.flatMap(({ path, imports }) =>
    imports.flatMap((edge) => {
      const { target, written } = edge;
      if (target === undefined) return [`everything resolves: ${path} → ${written}`];
      const broken = Object.entries(edgeRules).filter(([, breaks]) => breaks(path, target, edge));
      return broken.map(([rule]) => `${rule}: ${path} → ${target}`);
    }),
  );
}

/** Files of `lib` that no product code imports. */
export function orphans(modules: readonly Module[], entries: readonly string[]): string[] {
  const used = new Set(modules.flatMap(({ imports }) => imports.map(({ target }) => target)));
  return modules
    .map(({ path }) => path)
    .filter((path) => isIn(path, "lib/") && !used.has(path) && !entries.includes(path));
}

/** Ways by which a file reaches itself through imports that are there when the code runs. */
export function cycles(modules: readonly Module[]): string[] {
  const next = new Map(
    modules.map(({ path, imports }) => [
      path,
      imports.flatMap((edge) => (edge.typeOnly ? [] : (edge.target ?? []))),
    ]),
  );
  const done = new Set<string>();
  const found: string[] = [];
  const visit = (path: string, way: readonly string[]) => {
    const start = way.indexOf(path);
    if (start >= 0) found.push([...way.slice(start), path].join(" → "));
    if (start >= 0 || done.has(path)) return;
    for (const target of next.get(path) ?? []) visit(target, [...way, path]);
    done.add(path);
  };
  for (const path of next.keys()) visit(path, []);
  return found;
}

const SERVER_ONLY = /^lib\/(data\/|access\/(actor|action|auth|firstAdmin)\.ts)/;

/** Files that must not reach a browser and do not say so first. */
export function withoutServerOnly(modules: readonly Module[]): string[] {
  return modules
    .filter(({ path, imports }) => SERVER_ONLY.test(path) && imports[0]?.target !== "npm:server-only")
    .map(({ path }) => path);
}
