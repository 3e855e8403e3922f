import { describe, expect, it } from "vitest";
import type { Assumptions } from "@/lib/risk/assumptions";
import { likelyAssumptions } from "@/lib/risk/assumptions";
import { restorationBelief } from "@/lib/risk/restorationTimes";
import { downtimeTable, type StopRecord } from "@/lib/view/downtimeTable";
import { lineDowntime } from "@/lib/view/lineDowntime";
import { countEvents, countedWords, countsIn, eventRowsHref, type PartEvent } from "@/lib/view/partEvent";
import { ladderOf, ladderRows, type PartExperience } from "@/lib/view/partExperience";
import { consumptionSteps, returnedShare, weightText } from "@/lib/view/partRates";
import { timeMarks, trendFigures, trendWords } from "@/lib/view/partTrend";
import { familyGroups, poolingOf, pText, siteGroups } from "@/lib/view/pooling";

const event = (id: string, changes: Partial<PartEvent> = {}): PartEvent => ({
  ...{ id, day: "2026-08-01", time: "10:00", kind: "failure", siteCode: "PIN", lineCode: "PIN-03" },
  ...{ machine: "M1", place: "X1 -U1", downtimeHours: 4, logisticHours: 1, spareAtHand: true },
  ...{ source: "work order", reference: id, text: null, commonCause: null, setAside: null },
  ...changes,
});

const counts = (removals: number, failures: number, unitYears: number) => ({ removals, failures, unitYears });
const still = { events: 0, unitYears: 0, verdict: "too-few", tests: null, before: 0 } as const;

const experience = (changes: Partial<PartExperience> = {}): PartExperience => ({
  ...{ since: "2021-11-30", assumptions: likelyAssumptions as Assumptions, events: [] },
  sites: [
    { code: "PIN", name: "Pinewood", ...counts(5, 4, 100) },
    { code: "VEL", name: "Velmark", ...counts(6, 4, 120) },
  ],
  elsewhere: null,
  family: [
    { id: "one", number: "A-1", ...counts(11, 8, 220) },
    { id: "two", number: "A-2", ...counts(0, 0, 24) },
  ],
  trends: { removals: still, failures: still },
  ...changes,
});

describe("what an event counts as", () => {
  const burst = { commonCause: "Cooling" };

  it("is the first failure of a cause at a site, and nothing for the others", () => {
    const events = [
      event("c", { ...burst, time: "12:00" }),
      event("b", { ...burst, time: "11:00" }),
      event("a", { ...burst, time: "10:00", kind: "no_fault_found" }),
      event("far", { ...burst, siteCode: "VEL", kind: "no_fault_found" }),
      event("out", { setAside: "Same stop as another", commonCause: "Cooling", time: "01:00" }),
      event("plain", { kind: "removal" }),
    ];
    const counted = countEvents(events);
    expect(counted.map(({ id, countsAs }) => [id, countsAs])).toEqual([
      ["c", "with its cause"],
      ["b", "failure"],
      ["a", "with its cause"],
      ["far", "no fault found"],
      ["out", "set aside"],
      ["plain", "failure"],
    ]);
    expect(counted.filter((one) => countsIn(one, "failures")).map(({ id }) => id)).toEqual(["b", "plain"]);
    expect(counted.filter((one) => countsIn(one, "removals"))).toHaveLength(3);
    expect(counted.map(countedWords)[0]).toBe("counted once with its cause (Cooling)");
    expect(counted.map(countedWords)[4]).toBe("set aside: Same stop as another");
  });

  it("leads to exactly its rows", () => {
    expect(eventRowsHref("p", "failures")).toBe("/parts/p?events.is.failures=yes#events");
  });

  it("is one mark on the line of time for a burst, oldest first", () => {
    const events = countEvents([
      event("late", { day: "2026-11-30" }),
      event("b", { ...burst, time: "11:00" }),
      event("a", { ...burst, time: "10:00" }),
      event("start", { day: "2021-11-30", kind: "no_fault_found" }),
    ]);
    const marks = timeMarks(events, { from: "2021-11-30", until: "2026-11-30" }, (day) => day);
    expect(marks.map(({ id, at, failure, events: many }) => [id, at, failure, many])).toEqual([
      ["start", 0, false, 1],
      ["a", expect.closeTo(1705 / 1826, 9), true, 2],
      ["late", 1, true, 1],
    ]);
    expect(marks[1]?.words).toBe("2026-08-01, PIN: failure, 2 events of one cause: Cooling");
  });
});

describe("the levels of a rate", () => {
  it("name what each counted and borrowed, the share of the weight among it", () => {
    const names = { itemClass: "drive", family: "A", part: "A-1", sites: ["PIN", "VEL"] };
    const rows = ladderRows(ladderOf(experience(), "drive", "removals"), names);
    expect(rows.map(({ level }) => level)).toEqual([
      "Class: drive",
      "Family: A",
      "Part: A-1, all sites",
      "Own records alone",
      "Site: PIN",
      "Site: VEL",
    ]);
    expect(rows[0]).toMatchObject({ borrowed: "nothing", counted: "stated, not counted" });
    expect(rows[4]).toMatchObject({ counted: "5 in 100 unit-years" });
    expect(rows[4]?.borrowed).toMatch(/at 100 unit-years, 50 % of the weight$/);
  });

  it("show the own records alone beside the belief, wider, and from nothing where no event is", () => {
    const names = { itemClass: "drive", family: "A", part: "A-1", sites: [] };
    const rows = ladderRows(ladderOf(experience(), "drive", "failures"), names);
    const alone = rows.find(({ level }) => level === "Own records alone");
    // 8 events in 220 unit-years; chi-square points 7.962 (16 degrees) and 28.869 (18 degrees), printed tables.
    expect(alone?.mean).toBeCloseTo(8 / 220, 12);
    expect(alone?.low).toBeCloseTo(7.962 / 440, 5);
    expect(alone?.high).toBeCloseTo(28.869 / 440, 5);
    const none = experience({ sites: [{ code: "PIN", name: "Pinewood", ...counts(0, 0, 30) }] });
    const empty = ladderRows(ladderOf(none, "drive", "failures"), names);
    expect(empty.find(({ level }) => level === "Own records alone")).toMatchObject({ mean: 0, low: 0 });
    const never = ladderRows(ladderOf(experience({ sites: [] }), "drive", "failures"), names);
    expect(never.map(({ level }) => level)).not.toContain("Own records alone");
  });

  it("count other sites in the part, and leave the family out where there is none", () => {
    const [pin] = experience().sites;
    const one = experience({ sites: pin ? [pin] : [], elsewhere: counts(6, 4, 120), family: null });
    const ladder = ladderOf(one, "drive", "failures");
    expect(ladder.part.counted).toEqual({ events: 8, unitYears: 220 });
    expect(ladder.sites).toHaveLength(1);
    const names = { itemClass: "drive", family: null, part: "A-1", sites: ["PIN"] };
    expect(ladderRows(ladder, names).map(({ level }) => level)).not.toContain("Family: null");
  });
});

describe("whether groups share a rate", () => {
  const group = (name: string, failures: number, unitYears: number) => ({
    ...{ name, href: null },
    ...counts(failures, failures, unitYears),
  });

  it("is said of like groups, with what each would expect", () => {
    const like = poolingOf(siteGroups(experience()), "failures", "sites");
    expect(like.verdict).toBe("alike");
    expect(like.words).toMatch(/^2 sites show no difference beyond chance \(p = 0\.\d+\): pooled\.$/);
    expect(like.rows.map(({ expected }) => expected)).toEqual([
      expect.closeTo((100 * 8) / 220, 9),
      expect.closeTo((120 * 8) / 220, 9),
    ]);
  });

  it("is denied of unlike ones, left open of few events, and not asked of nothing", () => {
    expect(poolingOf([group("a", 20, 100), group("b", 1, 100)], "failures", "sites")).toMatchObject({
      verdict: "differ",
      words: expect.stringContaining("read the rate of each for itself"),
    });
    expect(poolingOf([group("a", 2, 100), group("b", 0, 1)], "failures", "sites").verdict).toBe("rough");
    expect(poolingOf([group("a", 0, 100), group("b", 0, 90)], "failures", "sites")).toMatchObject({
      verdict: "nothing",
      words: expect.stringContaining("no failures were counted"),
    });
    expect(poolingOf([group("a", 3, 100)], "failures", "sites").words).toContain("fewer than two sites");
  });

  it("leaves out of the test what was never in service, but not out of the rows", () => {
    const pooling = poolingOf([group("a", 2, 90), group("b", 3, 100), group("c", 1, 0)], "failures", "sites");
    expect(pooling.test?.degrees).toBe(1);
    expect(pooling.rows[2]).toMatchObject({ events: 1, rate: null });
  });

  it("names other sites only as one sum, and leads to sister parts", () => {
    expect(siteGroups(experience({ elsewhere: counts(1, 1, 9) })).map(({ name }) => name)).toEqual([
      "PIN",
      "VEL",
      "Other sites together",
    ]);
    expect(familyGroups(experience())?.[1]).toMatchObject({ name: "A-2", href: "/parts/two#events" });
    expect(familyGroups(experience({ family: null }))).toBeNull();
  });

  it("writes tiny chances as a bound", () => {
    expect([pText(0.00001), pText(0.0123)]).toEqual(["p < 0.001", "p = 0.012"]);
  });
});

describe("a trend in words", () => {
  const tests = { laplace: { u: -2.31, p: 0.021 }, power: { beta: 0.62, p: 0.03 } };
  const trend = { events: 29, unitYears: 1119.8, verdict: "slower", tests, before: 0 } as const;

  it("says what it means for the mean, or that there is too little", () => {
    expect(trendWords(trend, "failures")).toContain("come more slowly");
    expect(trendWords({ ...trend, verdict: "faster" }, "removals")).toContain("removals come faster");
    expect(trendWords({ ...trend, verdict: "hint-slower" }, "failures")).toMatch(
      /^A hint, no more: .*more slowly/,
    );
    expect(trendWords({ ...trend, verdict: "no-sign" }, "failures")).toMatch(/^No sign of change in 29 in/);
    expect(trendWords(still, "failures")).toContain("Too few failures to tell");
    expect(trendFigures(trend)).toEqual({ laplace: "u −2.31, p = 0.021", power: "β 0.62, p = 0.030" });
    expect(trendFigures(still)).toBeNull();
  });
});

describe("hours of stops", () => {
  const stop = (changes: Partial<StopRecord>): StopRecord => ({
    ...{ downtimeHours: 4, logisticHours: 1, spareAtHand: true, kind: "failure", setAside: null },
    ...changes,
  });
  const belief = restorationBelief(
    { itemClass: "drive", stage: "own-stock", repair: null },
    likelyAssumptions,
  );

  it("are split by spare and into waiting and work, and pulled to the belief by its weight", () => {
    const rows = downtimeTable(
      [
        stop({}),
        stop({ downtimeHours: 10, logisticHours: null }),
        stop({ downtimeHours: 100, logisticHours: 96, spareAtHand: false }),
        stop({ downtimeHours: 900, setAside: "Same stop" }),
        stop({ downtimeHours: null }),
        stop({ downtimeHours: 0, logisticHours: 0 }),
      ],
      belief,
    );
    expect(rows.map(({ spare, stops, median, mean }) => [spare, stops, median, mean])).toEqual([
      ["with a spare", 2, 7, 7],
      ["without a spare", 1, 100, 100],
    ]);
    expect(rows[0]).toMatchObject({ waiting: { hours: 1, stops: 1 }, work: { hours: 3, stops: 1 } });
    const prior = rows[0]?.belief;
    expect(rows[0]?.pulled).toBeCloseTo((5 * (prior?.hours ?? 0) + 14) / 7, 9);
  });

  it("without a stop are the belief; where nobody wrote the spare down there is a row and no belief", () => {
    const [none] = downtimeTable([], belief);
    expect(none?.mean).toBeNull();
    expect(none?.pulled).toBeCloseTo(none?.belief?.hours ?? 0, 9);
    const unknown = downtimeTable([stop({ spareAtHand: null })], belief)[2];
    expect(unknown).toMatchObject({ spare: "not known", stops: 1, pulled: null });
  });

  it("stand on a line by class, most stops first", () => {
    const { siteCode: _, lineCode: __, ...plain } = event("x");
    const seen = (itemClass: "drive" | "motor" | null) => ({ ...plain, part: null, itemClass });
    const classes = lineDowntime(
      [seen("motor"), seen("drive"), seen("drive"), seen(null)],
      likelyAssumptions,
    );
    expect(classes.map(({ label }) => label)).toEqual(["drive", "class not recorded", "motor"]);
    expect(classes[0]?.rows).toMatchObject([{ spare: "with a spare", stops: 2 }]);
  });
});

describe("the consumption", () => {
  const removal = {
    ...{ mean: 0.04, low: 0.03, high: 0.05, events: 43, unitYears: 900, a: 40, b: 1000 },
    ...{ priorMean: 0.035, priorUnitYears: 100 },
  };

  it("takes the repair yield on record, and says where none is", () => {
    expect(returnedShare(0.6)).toEqual({ share: 0.6, assumed: false });
    expect(returnedShare(null)).toEqual({ share: 0, assumed: true });
    expect(consumptionSteps(removal, returnedShare(0.6)).at(-1)).toMatchObject({
      formula: "0.0400 × (1 − 0.60)",
      value: "0.0160",
    });
    expect(consumptionSteps(removal, returnedShare(null))[1]?.label).toContain("none on record");
  });

  it("says how much of a rate is its own records", () => {
    expect(weightText(removal)).toMatch(/^Own records carry 90.% of the weight/);
  });
});
