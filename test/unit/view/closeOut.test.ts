import { expect, it } from "vitest";
import type { CloseTopic } from "@/lib/projects/closeOut";
import { benefitFigures, benefitRows, promiseRows } from "@/lib/view/benefit";
import { closeTopicWords, mendAt, refusalWords } from "@/lib/view/closeOut";

it("leads from each lack to the page that mends it", () => {
  const at = (topic: CloseTopic, id: string | null = "x") => mendAt({ code: "KAR-02-R1", topic, id });
  expect([at("axes"), at("safety", null), at("backups"), at("points"), at("money"), at("gates")]).toEqual([
    ...["/projects/KAR-02-R1/axes/x", "/projects/KAR-02-R1/axes", "/machines/x"],
    ...["/projects/KAR-02-R1/points", "/projects/KAR-02-R1/money", "/projects/KAR-02-R1/schedule"],
  ]);
  expect([at("removed"), at("fitted"), at("register"), at("levels")]).toEqual([
    ...["#removed", "#fitted", "#statements", "/levels"],
  ]);
});

it("says of each topic the first lack and how many more there are", () => {
  const missing = ["one.", "two.", "three."].map((text) => ({ id: null, text }));
  expect(
    refusalWords([
      { topic: "removed", of: 5, missing },
      { topic: "gates", of: 1, missing: [] },
      { topic: "levels", of: 1, missing: missing.slice(0, 1) },
    ]),
  ).toBe(`${closeTopicWords("removed").title}: one. And 2 more. ${closeTopicWords("levels").title}: one.`);
});

it("judges no money before a whole year has passed, and names what nobody recorded", () => {
  const facts = {
    before: { from: "2025-07-13", until: "2026-07-13" },
    after: { from: "2027-03-01", until: "2027-06-01" },
    ...{ whole: false, cost: null, released: ["usable", null] as const },
    experienceBefore: { events: [{ downtimeHours: null, driveLeft: true }], unitYears: 20 },
    experienceAfter: { events: [], unitYears: 5 },
    request: { cost: 400_000, stopLoss: 90_000, budget: null, paid: 410_000 },
  };
  const came = Object.fromEntries(promiseRows(benefitFigures(facts)).map((row) => [row.label, row.came]));
  expect(came["Stop loss in a year that was to go"]).toBe("too early to say");
  expect(came["Hours of work"]).toBe("no hours are recorded");
  expect(came["Parts released"]).toBe("1 usable");
  const whole = promiseRows(benefitFigures({ ...facts, whole: true }));
  expect(whole.find(({ label }) => label.startsWith("Stop loss"))?.came).toBe("not known");
  const rows = Object.fromEntries(benefitRows(benefitFigures(facts)).map((row) => [row.label, row]));
  expect(rows["Money of the stops"]).toMatchObject({ before: "not known", after: "not known" });
  expect(rows["Hours the line stood"]?.said).toMatch(/^1 event does not say/);
});
