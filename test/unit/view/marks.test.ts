import { expect, test } from "vitest";
import { SUPPLY_STAGES } from "@/lib/lifecycle/supplyStage";
import { evidenceMark, evidenceView } from "@/lib/view/evidence";
import { keepAsOf } from "@/lib/view/keepAsOf";
import { stageBadge, stageOrder, stageView } from "@/lib/view/stage";

test("the stages read U A B C C! D E F in their order, and no two share letter or name", () => {
  const views = SUPPLY_STAGES.map(stageView);
  expect(views.map((view) => view.letter)).toEqual(["U", "A", "B", "C", "C!", "D", "E", "F"]);
  expect(new Set(views.map((view) => view.name)).size).toBe(SUPPLY_STAGES.length);
  expect(SUPPLY_STAGES.map(stageOrder)).toEqual(SUPPLY_STAGES.map((_, place) => place));
});

test("the badge fills from empty to full and never falls back", () => {
  const steps = SUPPLY_STAGES.slice(1).map((stage) => stageView(stage).step ?? Number.NaN);
  expect(steps[0]).toBe(0);
  expect(steps.at(-1)).toBe(5);
  expect(steps).toEqual([...steps].sort((a, b) => a - b));
  expect(stageBadge("undated")).toEqual({ letter: "U", step: null, text: "Undated" });
});

test("evidence is marked by its first letter", () => {
  for (const evidence of ["measured", "documented", "inferred", "assumed"] as const) {
    expect(evidenceView(evidence).grade).toBe(evidence[0]);
    expect(evidenceMark(evidence).text).toBe(evidence);
  }
});

test("a link inside the application keeps the day looked at", () => {
  expect(keepAsOf("/lines/VEL-01", "2027-04-30")).toBe("/lines/VEL-01?asOf=2027-04-30");
  expect(keepAsOf("/lines?site=VEL#top", "2027-04-30")).toBe("/lines?site=VEL&asOf=2027-04-30#top");
  expect(keepAsOf("/lines?asOf=2026-01-01", "2027-04-30")).toBe("/lines?asOf=2026-01-01");
});

test("a link keeps as it is when today is looked at or it leads elsewhere", () => {
  expect(keepAsOf("/lines", null)).toBe("/lines");
  expect(keepAsOf("https://example.org/a", "2027-04-30")).toBe("https://example.org/a");
  expect(keepAsOf("//example.org/a", "2027-04-30")).toBe("//example.org/a");
  expect(keepAsOf("#part", "2027-04-30")).toBe("#part");
});
