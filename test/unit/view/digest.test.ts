import { describe, expect, test } from "vitest";
import { MOVED_STEPS } from "@/lib/risk/moved/snapshotInput";
import type { DateAhead } from "@/lib/view/datesAhead";
import { digestMail } from "@/lib/view/digest";
import { digestStateWords, digestTraceWords } from "@/lib/view/digestTrace";
import type { ReviewFigures, WorsePart } from "@/lib/view/review";

const still = Object.fromEntries(MOVED_STEPS.map((step) => [step, 0])) as WorsePart["loss"]["steps"];
const worst: WorsePart = {
  ...{ poolId: "p", units: 4, number: "QF-<08>", description: "Panel", stage: "own-stock", main: "events" },
  noSpare: { before: 27, after: 31, steps: { ...still, events: 4 }, change: 4 },
  loss: { before: 9_000, after: 9_800, steps: { ...still, events: 800 }, change: 800 },
  usable: { before: 19, after: 19, steps: still, change: 0 },
  inputs: [
    {
      step: "events",
      subject: "QF at VEL",
      what: "removals in five years",
      before: "9",
      after: "10",
      href: null,
    },
  ],
  href: null,
};
const date = (on: string): DateAhead => ({
  ...{ key: on, kind: "order-by", on, what: "x", of: "Heron R", href: "/parts", sites: ["VEL"], units: 4 },
  overdue: false,
});
const figures: ReviewFigures = {
  ...{ asOf: "2026-11-30", siteCode: "VEL", siteName: "Velmark", engine: "e", parts: 9, better: 0 },
  ...{ base: { kind: "review", asOf: "2026-11-24" }, worse: [worst], repairs: [], holds: [], transfers: [] },
  ...{ dates: [date("2026-12-30"), date("2026-12-31")], uncounted: { lots: 0, of: 5, first: [] } },
};
const mail = (more: Partial<ReviewFigures> = {}) =>
  digestMail({ figures: { ...figures, ...more }, late: [], address: "https://plant.example" });

describe("the week as a mail", () => {
  test("tells what got worse, with why", () => {
    expect(mail().subject).toBe("Spares of VEL: 1 part got worse, 0 actions of yours late");
    expect(mail().text).toContain(
      "- QF-<08>: no-spare chance 2.7\u00a0% → 3.1\u00a0%, loss here 9\u202f000 → 9\u202f800 € a year. Events: removals in five years 9 → 10",
    );
  });

  test("tells dates within 30 days and none beyond", () => {
    expect(mail().text).toContain("30 Dec 2026");
    expect(mail().text).not.toContain("31 Dec 2026");
  });

  test("says that nothing is to tell, and stops a long list", () => {
    expect(mail({ worse: [], dates: [] }).text).toMatch(/Nothing passed the threshold\.[\s\S]*- None\./);
    const many = Array.from({ length: 14 }, (_, place) => ({ ...worst, poolId: String(place) }));
    expect(mail({ worse: many }).text).toContain("- and 2 more");
  });

  test("has the same words as HTML, in which nothing written runs", () => {
    expect(mail().html).toContain("<li>QF-&lt;08&gt;: no-spare chance");
    expect(mail().html).not.toContain("<08>");
    expect(mail().html).toContain('href="https://plant.example/review?site=VEL"');
  });
});

test.each([
  [{ sentAt: "2026-11-30T06:00:05Z" }, "Asked for 30 Nov 2026, 06:00: sent 30 Nov 2026, 06:00."],
  [{ file: "mails/a.eml" }, "Asked for 30 Nov 2026, 06:00: written to mails/a.eml."],
  [{}, "Asked for 30 Nov 2026, 06:00: waits to be sent."],
  [
    { problem: "452 full", tries: 2 },
    "Asked for 30 Nov 2026, 06:00: not sent after 2 tries, and tried again. 452 full",
  ],
  [
    { problem: "452 full", tries: 10 },
    "Asked for 30 Nov 2026, 06:00: not sent after 10 tries, and given up. 452 full",
  ],
])("what became of a mail: %o", (more, words) => {
  const asked = { askedAt: "2026-11-30T06:00:00Z", sentAt: null, file: null, tries: 0, problem: null };
  expect(digestTraceWords({ ...asked, ...more }, "UTC")).toBe(words);
});

test("where mails go, and that a standing installation sends none by itself", () => {
  expect(digestStateWords({ folder: null, standsAt: null })).toBe(
    "Mails go to the address you sign in with.",
  );
  expect(digestStateWords({ folder: ".ebbline/mails", standsAt: "2026-11-30" })).toMatch(
    /written to a file in \.ebbline\/mails .* stands at 30 Nov 2026, so none goes by itself/,
  );
});
