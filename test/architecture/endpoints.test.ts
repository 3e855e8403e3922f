import { describe, expect, it } from "vitest";
import {
  openRoutes,
  strayServerFunctions,
  unguardedActions,
  unguardedHandlers,
  unscopedReads,
  withoutActor,
} from "./endpoints";
import { listFiles, parseModule, readModules } from "./sources";

const app = readModules("app");
const data = readModules("lib/data").filter(({ path }) => path.split("/").length === 3);

describe("the project", () => {
  it("makes each action with action({…})", () => {
    expect(app.filter(({ path }) => path.endsWith("/actions.ts")).flatMap(unguardedActions)).toEqual([]);
  });

  it("opens server functions nowhere else", () => {
    expect([...app, ...readModules("lib")].flatMap(strayServerFunctions)).toEqual([]);
  });

  it("asks for the actor in each route handler", () => {
    const routes = app.filter(({ path }) => path.endsWith("/route.ts"));
    expect(routes.length).toBeGreaterThan(0);
    expect(routes.flatMap(unguardedHandlers)).toEqual([]);
  });

  it("takes the actor first wherever data is read or changed", () => {
    expect(data.length).toBeGreaterThan(0);
    expect(data.flatMap(unscopedReads)).toEqual([]);
  });

  it("has each exception it lists", () => {
    const files = listFiles("app", "lib");
    const listed = [...Object.keys(withoutActor), ...Object.keys(openRoutes)];
    expect(listed.filter((start) => !files.some((path) => path.startsWith(start)))).toEqual([]);
  });
});

describe("a planted breach is found", () => {
  it.each([
    `"use server"; export async function sneak(id: string) { return id; }`,
    `"use server"; export const sneak = async (id: string) => id;`,
    `"use server"; const sneak = 1; export { sneak };`,
    `"use server"; export * from "./other";`,
    `"use server"; export const sneak = action(recipe);`,
    `export const fine = action({});`,
  ])("in actions: %s", (text) => {
    expect(unguardedActions(parseModule("app/x/actions.ts", text))).toHaveLength(1);
  });

  it("not in a guarded action", () => {
    const text = `"use server"; export const fine = action({ needs: "read" }); export type Fine = string;`;
    expect(unguardedActions(parseModule("app/x/actions.ts", text))).toEqual([]);
  });

  it("in a function that opens an endpoint inside a page", () => {
    const text = `export const Page = () => { async function sneak() { "use server"; } return sneak; };`;
    expect(strayServerFunctions(parseModule("app/x/page.tsx", text))).toHaveLength(1);
  });

  it.each([
    "export async function readAll(id: string) { return id; }",
    "export async function readAll() {}",
    "export const readAll = async (actor: string) => actor;",
    "export const readAll = cache(async (id: string) => id);",
    `export { readAll } from "./other";`,
  ])("in data: %s", (text) => {
    expect(unscopedReads(parseModule("lib/data/planted.ts", text))).toHaveLength(1);
  });

  it("not in a scoped read", () => {
    const text = "export const LIMIT = 5; export const readAll = cache(async (actor: Actor) => actor);";
    expect(unscopedReads(parseModule("lib/data/planted.ts", text))).toEqual([]);
  });

  it("in a route handler that asks nobody", () => {
    const text = "export async function GET() { return Response.json({}); }";
    expect(unguardedHandlers(parseModule("app/api/planted/route.ts", text))).toHaveLength(1);
  });
});
