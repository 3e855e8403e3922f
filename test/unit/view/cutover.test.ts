import { describe, expect, it } from "vitest";
import {
  type CutoverPlan,
  type CutoverStepRow,
  clockReading,
  cutoverStanding,
  fallBackWords,
  reckonAt,
  span,
} from "@/lib/view/cutover";

const step = (given: Partial<CutoverStepRow> = {}): CutoverStepRow => ({
  ...{ id: "a", version: 1, title: "Wire", who: "", phone: "", needs: "", caution: "" },
  ...{ afterHours: 0, hours: 10, startedAt: null, endedAt: null, ...given },
});

const plan = (given: Partial<CutoverPlan> = {}): CutoverPlan => ({
  ...{ id: "p", version: 1, name: "Half", restoreTestedBy: "Controls", steps: [step()] },
  ...{ startsAt: "2027-01-02T05:00:00Z", productionAt: "2027-01-04T05:00:00Z" },
  ...{ restoreHours: 20, marginHours: 4, restoreTestedOn: "2026-12-01", ...given },
});

const words = (given: Partial<CutoverPlan>, at: string | null) => {
  const made = plan(given);
  return fallBackWords(made, cutoverStanding(made, at), "Europe/Stockholm");
};

describe("the hour a cutover is reckoned at", () => {
  const begun = plan({ steps: [step({ startedAt: "2027-01-02T06:00:00Z" })] });

  it("is the device's while the cutover is on, half a day before to a day after", () => {
    expect(reckonAt(begun, "2027-01-01T17:00:00.000Z")).toBe("2027-01-01T17:00:00.000Z");
    expect(reckonAt(begun, "2027-01-05T05:00:00.000Z")).toBe("2027-01-05T05:00:00.000Z");
  });

  it("is that of the last entry otherwise, and once every step is over", () => {
    expect(reckonAt(begun, "2027-01-01T16:59:00.000Z")).toBe("2027-01-02T06:00:00Z");
    expect(reckonAt(begun, null)).toBe("2027-01-02T06:00:00Z");
    expect(reckonAt(plan(), "2026-11-27T19:00:00.000Z")).toBeNull();
    const over = step({ startedAt: "2027-01-02T06:00:00Z", endedAt: "2027-01-02T18:00:00Z" });
    expect(reckonAt(plan({ steps: [over] }), "2027-01-03T05:00:00.000Z")).toBe("2027-01-02T18:00:00Z");
  });
});

describe("the way back in words", () => {
  it("says plainly that it is past, that there is none, and how long is left", () => {
    expect(words({}, "2027-01-03T03:30:00.000Z").replaceAll("\u00a0", " ")).toBe(
      "Until 3 Jan 2027, 06:00 the old system can be put back in time. 1 h 30 min are left until then.",
    );
    expect(words({}, "2027-01-03T05:00:01.000Z")).toMatch(/^Past the fall-back point of 3 Jan 2027, 06:00/);
    expect(words({ restoreTestedOn: null }, null)).toMatch(/^There is no fall-back: .* never tried/);
    expect(words({ marginHours: null }, null)).toMatch(/^There is no fall-back: .* not written down/);
    expect(words({ restoreHours: 60 }, null)).toMatch(/^There is no time to fall back/);
  });
});

it("writes hours as people say them, and an instant as the clock of the place shows it", () => {
  expect([span(3.3333), span(0.5), span(0), span(-26)].map((text) => text.replaceAll("\u00a0", " "))).toEqual(
    [...["3 h 20 min", "30 min", "0 min", "26 h"]],
  );
  // Half an hour after midnight in Stockholm is the day before in London.
  expect(clockReading("2027-01-02T23:30:00Z", "Europe/Stockholm")).toBe("2027-01-03T00:30");
  expect(clockReading(null, "Europe/Stockholm")).toBe("");
});
