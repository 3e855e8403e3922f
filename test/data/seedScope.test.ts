import { afterAll, beforeAll, expect, test, vi } from "vitest";
import { readLineScope } from "@/lib/data/lineScope";
import type { Scope } from "@/lib/retrofit/scope/buildScope";
import { likelyScopeNorms as norms } from "@/lib/retrofit/scope/scopeNorms";
import { allBlockers, firstStep, type ScopeView, scopeView } from "@/lib/view/lineScope";
import { load } from "@/seed/load";
import { showcase } from "@/seed/scenarios/showcase/showcase";
import { company, D0 } from "@/test/data/seedLookup";
import { type FreshDatabase, freshDatabase } from "@/test/support/database";
import { personWith } from "@/test/support/twoSites";

vi.setConfig({ testTimeout: 120_000 });

let fresh: FreshDatabase;

beforeAll(async () => {
  fresh = await freshDatabase("seedScope");
  await load(fresh.url, "showcase", showcase());
}, 120_000);
afterAll(() => fresh.close());

async function viewOf(code: string): Promise<ScopeView & { readonly found: Scope | null }> {
  const read = await readLineScope(personWith("viewer", null), { code, asOf: D0 });
  if (!read) throw new Error(`no line ${code}`);
  const view = scopeView(read, { target: undefined, window: undefined }, norms);
  return { ...view, found: view.scope.ok ? view.scope.value : null };
}

test("VEL-03 needs its controllers first, and 17 days in a window of 14", async () => {
  const { target, found, window } = await viewOf("VEL-03");
  if (!found) throw new Error("no scope");
  expect(target).toBe("Heron E");
  expect(firstStep(found, window)).toBe("Controller first");
  expect(found.work.days.toFixed(1)).toBe("17.1");
  expect(window).toMatchObject({
    window: { startsOn: "2027-08-02", endsOn: "2027-08-20" },
    fit: { state: "short", usableDays: 14 },
  });
  const blocked = allBlockers(found, window).filter(({ state }) => state === "blocked");
  expect(blocked.map(({ name }) => name)).toEqual(
    expect.arrayContaining(["Firmware floor", "Hardware ceiling", "Window too short"]),
  );
});

test("KAR-02 has the 11 motors nobody matched before the order", async () => {
  const { found } = await viewOf("KAR-02");
  expect(found?.axes).toHaveLength(20);
  expect(found?.counts.motors).toEqual([11, 11, 11]);
});

test("a line that has the new drives has nothing to convert", async () => {
  expect((await viewOf("VEL-04")).scope).toEqual({ ok: false, error: { kind: "nothing" } });
});

test("on every line each axis is converted or stays, and a ring never leaves its line", async () => {
  const lineOf = new Map(company.Machine.map(({ id, lineId }) => [id, lineId]));
  for (const { id, code } of company.Line) {
    const { found } = await viewOf(code);
    if (!found) continue;
    const axes = company.Axis.filter(({ machineId }) => lineOf.get(machineId) === id).length;
    expect(found.axes.length + found.staying.length, code).toBe(axes);
    expect(found.elsewhere, code).toEqual([]);
  }
});
