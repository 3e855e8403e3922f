import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { currentEvaluation } from "@/lib/data/group/currentEvaluation";
import { loadGroupInput } from "@/lib/data/group/loadGroupInput";
import { readLine } from "@/lib/data/line";
import { readRanking } from "@/lib/data/ranking";
import { likelyAssumptions } from "@/lib/risk/assumptions";
import { drawRanks } from "@/lib/risk/draws/drawRanks";
import type { LinePlace } from "@/lib/risk/draws/linePlace";
import { evaluate } from "@/lib/risk/evaluate";
import type { GroupInput } from "@/lib/risk/evaluation";
import { load } from "@/seed/load";
import { showcase } from "@/seed/scenarios/showcase/showcase";
import { type FreshDatabase, freshDatabase } from "@/test/support/database";

const asOf = "2026-11-30";
const seed = 20_261_130;
let fresh: FreshDatabase;
let input: GroupInput;

const viewer = (siteId: string | null): Actor => ({
  ...{ userId: "person", name: "Person", email: "person@halvenor.example" },
  grants: [{ role: "viewer", siteId }],
});

const siteOf = (code: string) => database().site.findUniqueOrThrow({ where: { code } });

beforeAll(async () => {
  fresh = await freshDatabase("rankSpan");
  await load(fresh.url, "showcase", showcase());
  input = await loadGroupInput(database(), asOf);
}, 120_000);
afterAll(() => fresh.close());

describe("the draws of the demo group", () => {
  const idOf = (code: string) => input.lines.find((line) => line.code === code)?.id ?? "";
  const draw = (group: GroupInput, draws: number) => drawRanks(group, likelyAssumptions, { draws, seed });
  const settled = (code: string): GroupInput => ({
    ...input,
    lines: input.lines.map((line) => (line.code === code ? { ...line, costEvidence: "measured" } : line)),
  });
  const find = (places: readonly LinePlace[], code: string) =>
    places.find((place) => place.lineId === idOf(code));

  test("have the evaluation's means, within four and a half standard errors for each of 40 lines", () => {
    const exact = new Map(
      evaluate(input, likelyAssumptions).lines.map(({ lineId, stopLoss }) => [lineId, stopLoss?.mean ?? 0]),
    );
    const places = draw(input, 4000);
    expect(places).toHaveLength(40);
    for (const { lineId, stopLoss } of places)
      expect(Math.abs(stopLoss.mean - (exact.get(lineId) ?? 0))).toBeLessThan(4.5 * stopLoss.error);
  });

  test("narrow the places of TAD-01 once its cost per hour is measured, and end its fragility", () => {
    const open = find(draw(input, 1000), "TAD-01");
    const known = find(draw(settled("TAD-01"), 1000), "TAD-01");
    if (!open || !known) throw new Error("TAD-01 is not drawn");
    expect(open.fragile).toBe(true);
    expect(open.unknowns[0]?.kind).toBe("cost");
    expect(known.fragile).toBe(false);
    expect(known.place.high - known.place.low).toBeLessThan(open.place.high - open.place.low);
    expect(known.stopLoss.high - known.stopLoss.low).toBeLessThan(open.stopLoss.high - open.stopLoss.low);
  });

  test("leave a line's own losses as they were when another line's cost is settled", () => {
    const before = find(draw(input, 200), "VEL-03");
    expect(find(draw(settled("TAD-01"), 200), "VEL-03")?.stopLoss).toEqual(before?.stopLoss);
  });
});

describe("what is stored and read", () => {
  test("each evaluated line with money holds its place, drawn 400 times by the day's seed", async () => {
    const { id } = await currentEvaluation(asOf);
    const rows = await database().evaluatedLine.findMany({ where: { evaluationId: id } });
    expect(rows).toHaveLength(40);
    for (const { lineId, place } of rows) expect(place).toMatchObject({ lineId, draws: 400, seed });
  });

  test("the ranking shows the drawn span about the evaluated mean, and what to settle in the reader's words", async () => {
    const { lines } = await readRanking(viewer(null), asOf);
    const tad = lines.find(({ code }) => code === "TAD-01");
    expect(tad?.place?.checks[0]).toMatchObject({ kind: "cost", siteCodes: [], elsewhere: false });
    const { id } = await currentEvaluation(asOf);
    const row = await database().evaluatedLine.findFirstOrThrow({
      where: { evaluationId: id, line: { code: "TAD-01" } },
    });
    const stored = row.place as unknown as LinePlace;
    expect(tad?.stopLoss).toMatchObject({ low: stored.stopLoss.low, high: stored.stopLoss.high });
    expect(tad?.place?.span).toEqual(stored.place);
  });

  test("a dossier names neighbours of the reader's sites only", async () => {
    const all = await readLine(viewer(null), { code: "PIN-03", asOf });
    expect(all?.place?.neighbours.every(({ code }) => code !== null)).toBe(true);
    const pin = await siteOf("PIN");
    const own = await readLine(viewer(pin.id), { code: "PIN-03", asOf });
    const hidden = all?.place?.neighbours.filter(({ code }) => !code?.startsWith("PIN")) ?? [];
    expect(hidden.length).toBeGreaterThan(0);
    expect(own?.place?.neighbours.filter(({ code }) => code === null)).toHaveLength(hidden.length);
    for (const line of input.lines.filter(({ siteId }) => siteId !== pin.id))
      expect(JSON.stringify([own?.place, own?.result])).not.toMatch(new RegExp(`${line.id}|${line.code}`));
  });

  test("a lot nobody counted at another site is not placed for a one-site reader", async () => {
    const line = await database().line.findUniqueOrThrow({ where: { code: "TAD-01" } });
    const tad = await siteOf("TAD");
    const vel = await siteOf("VEL");
    const position = await database().position.findFirstOrThrow({
      where: { machine: { lineId: line.id }, itemClass: "drive", partId: { not: null } },
    });
    const part = await database().part.findUniqueOrThrow({ where: { id: position.partId ?? "" } });
    await database().stockLot.create({
      data: { siteId: vel.id, partId: part.id, bin: "Z-9", state: "usable", quantity: null },
    });
    await database().dataVersion.updateMany({ data: { version: { increment: 1 } } });
    const checks = async (siteId: string | null) =>
      (await readLine(viewer(siteId), { code: "TAD-01", asOf }))?.place?.checks.find(
        ({ kind }) => kind === "stock",
      );
    expect(await checks(tad.id)).toMatchObject({ label: part.number, siteCodes: [], elsewhere: true });
    expect(await checks(null)).toMatchObject({ label: part.number, siteCodes: ["VEL"], elsewhere: false });
  });
});
