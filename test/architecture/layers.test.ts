import { describe, expect, it } from "vitest";
import { breaches, cycles, edgeRules, orphans, withoutServerOnly } from "./layers";
import { parseModule, readModules } from "./sources";

const modules = readModules("app", "lib", "seed", "prisma");

/** Files that are started rather than imported. */
const ENTRIES = [
  ...["backup", "prepare", "restore", "setUp", "start", "test"].flatMap((name) => [
    `lib/launch/${name}.mjs`,
    `lib/launch/${name}.ts`,
  ]),
  "lib/launch/packagesReport.ts",
  // By solveThread.ts, as a thread.
  "lib/jobs/solveWorker.ts",
  // By evaluationThread.ts, as a thread.
  "lib/jobs/evaluationWorker.ts",
  // By instrumentation.ts, which Next calls.
  "lib/access/clientAddress.ts",
  "lib/access/everyAnswer.ts",
  "lib/jobs/startWhenReachable.ts",
  "lib/words/listen.ts",
  // By the compiler, for every element.
  "lib/words/jsx-dev-runtime.ts",
];

/** Public functions of the core that programs outside hold against published figures, before a screen needs them. */
const HELD_FROM_OUTSIDE = [
  "lib/portfolio/cashFlow.ts",
  "lib/portfolio/solve.ts",
  "lib/retrofit/scaling.ts",
  "lib/spares/allocate.ts",
];

describe("the project", () => {
  it("keeps each import rule", () => {
    expect(modules.length).toBeGreaterThan(40);
    expect(breaches(modules)).toEqual([]);
  });

  it("has no import cycle, types aside", () => {
    expect(cycles(modules)).toEqual([]);
  });

  it("has no file in lib that nothing uses", () => {
    expect(orphans(modules, [...ENTRIES, ...HELD_FROM_OUTSIDE])).toEqual([]);
  });

  it("says first which files never reach a browser", () => {
    expect(withoutServerOnly(modules)).toEqual([]);
  });
});

describe("a planted breach is found", () => {
  const planted: Record<string, [path: string, text: string][]> = {
    "core is pure": [
      ["lib/risk/planted.ts", `import { database } from "@/lib/data/client";`],
      ["lib/risk/planted.ts", `import { useState } from "react";`],
      ["lib/risk/planted.ts", `import { readFileSync } from "node:fs";`],
      ["lib/risk/planted.ts", `import type { PrismaClient } from "@/prisma/generated/client";`],
      ["lib/risk/planted.ts", `type Row = import("@/lib/data/client").Row;`],
      ["lib/risk/planted.ts", `import { parse } from "csv-parse/sync";`],
      ["lib/risk/planted.ts", `import loadHighs from "highs";`],
      ["lib/access/policy.ts", `import { auth } from "@/lib/access/auth";`],
      ["lib/view/planted.ts", `export { GET } from "@/app/api/health/route";`],
    ],
    "core has an order": [
      ["lib/kernel/planted.ts", `import type { X } from "@/lib/risk/rankAgreement";`],
      ["lib/risk/planted.ts", `import { x } from "../projects/earnedValue";`],
    ],
    "Prisma only in data": [
      ["app/(workspace)/lines/page.tsx", `import { Prisma } from "@/prisma/generated/client";`],
      ["lib/access/planted.ts", `import { Client } from "pg";`],
    ],
    "components never read data": [
      ["app/(workspace)/lines/_components/Planted.tsx", `import { database } from "@/lib/data/client";`],
      ["app/_ui/Planted.tsx", `import { currentActor } from "@/lib/access/actor";`],
    ],
    "pages read through the files of lib/data": [
      ["app/(workspace)/lines/page.tsx", `import { x } from "@/lib/data/group/currentEvaluation";`],
      ["app/api/planted/route.ts", `import { database } from "@/lib/data/client";`],
    ],
    "shared parts know no page": [["app/_ui/Planted.tsx", `import { x } from "../api/health/route";`]],
    "lib never imports app": [["lib/data/planted.ts", `import { GET } from "@/app/api/health/route";`]],
    "nothing but launch and seed imports launch": [
      ["lib/data/planted.ts", `import { migrate } from "@/lib/launch/migrate";`],
    ],
    "the product never imports the demonstration or tests": [
      ["lib/data/planted.ts", `import { x } from "@/test/support/database";`],
    ],
    "everything resolves": [
      ["lib/data/planted.ts", `import { x } from "@/lib/nowhere";`],
      ["lib/data/planted.ts", `import x from "a-package-nobody-declared";`],
    ],
  };
  const cases = Object.entries(planted).flatMap(([rule, files]) =>
    files.map(([path, text]): [string, string, string] => [rule, path, text]),
  );

  it.each(cases)("%s: %s with %s", (rule, path, text) => {
    const found = breaches([parseModule(path, text)]);
    expect(found.map((line) => line.split(":")[0])).toContain(rule);
  });

  it("a route keeps its parts", () => {
    const breaks = edgeRules["a route keeps its parts"];
    const edge = { written: "", target: "", typeOnly: false };
    const part = "app/(workspace)/lines/[code]/_components/Part.tsx";
    expect(breaks?.("app/(workspace)/parts/page.tsx", part, edge)).toBe(true);
    expect(breaks?.("app/(workspace)/lines/page.tsx", "app/(workspace)/plans/actions.ts", edge)).toBe(true);
    expect(breaks?.("app/(workspace)/lines/[code]/page.tsx", part, edge)).toBe(false);
  });

  it("each rule has a planted breach", () => {
    expect([...Object.keys(planted), "a route keeps its parts"].sort()).toEqual(
      [...Object.keys(edgeRules), "everything resolves"].sort(),
    );
  });

  it("a cycle, an orphan and a file that could reach a browser", () => {
    const one = { ...parseModule("lib/a.ts", ""), imports: [edge("lib/b.ts")] };
    const other = { ...parseModule("lib/b.ts", ""), imports: [edge("lib/a.ts")] };
    const typed = { ...other, imports: [{ ...edge("lib/a.ts"), typeOnly: true }] };
    expect(cycles([one, typed])).toEqual([]);
    expect(cycles([one, other])).toEqual(["lib/a.ts → lib/b.ts → lib/a.ts"]);
    expect(orphans([one, { ...other, imports: [] }], [])).toEqual(["lib/a.ts"]);
    expect(withoutServerOnly([parseModule("lib/data/planted.ts", `import "react";`)])).toHaveLength(1);
  });
});

function edge(target: string) {
  return { written: target, target, typeOnly: false };
}
