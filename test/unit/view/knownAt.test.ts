import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { keepAsOf } from "@/lib/view/keepAsOf";
import { isBefore, knownOn, knownWords, looksBack, readKnownAt } from "@/lib/view/knownAt";

describe("how far a page looks back", () => {
  it("is a day to its end, or a minute of it, and nothing else", () => {
    expect(readKnownAt("2026-05-12")?.at).toBe("2026-05-12T23:59:59.999999Z");
    expect(readKnownAt("2026-05-12T14:30")?.at).toBe("2026-05-12T14:30:00.000000Z");
    for (const text of [
      null,
      "",
      "2026-02-30",
      "2026-05-12T24:00",
      "2026-05-12T14:30:00",
      "x",
      "2026-05-12 -c a=b",
      "2026-05-12_Europe/Nowhere",
      "2026-05-12_Europe/Berlin -c a=b",
    ])
      expect(readKnownAt(text)).toBeNull();
  });

  it("ends at the midnight of the zone it names, in summer and winter and where the clock skips midnight", () => {
    const at = (text: string) => readKnownAt(text)?.at;
    expect(at("2026-05-12_Europe/Berlin")).toBe("2026-05-12T21:59:59.999999Z");
    expect(at("2026-12-12_Europe/Berlin")).toBe("2026-12-12T22:59:59.999999Z");
    expect(at("2026-05-12_America/Chicago")).toBe("2026-05-13T04:59:59.999999Z");
    expect(at("2026-05-12T14:30_Asia/Kolkata")).toBe("2026-05-12T09:00:00.000000Z");
    // Lebanon put its clock forward at midnight on 26 March 2023: the day before ended when it showed 01:00.
    expect(at("2023-03-25_Asia/Beirut")).toBe("2023-03-25T21:59:59.999999Z");
    // Of the hour that comes twice the first counts; of the one that is skipped the instant it would have been.
    expect(at("2026-10-25T02:30_Europe/Berlin")).toBe("2026-10-25T00:30:00.000000Z");
    expect(at("2026-03-29T02:30_Europe/Berlin")).toBe("2026-03-29T01:30:00.000000Z");
    expect(knownOn("2026-05-12", "Europe/Berlin")).toEqual(readKnownAt("2026-05-12_Europe/Berlin"));
    expect(knownOn("2026-05-12", "UTC")).toEqual(readKnownAt("2026-05-12"));
  });

  it("is before the first moment that is known, or not", () => {
    const known = knownOn("2026-05-12", "UTC");
    expect(isBefore(known, { at: "2026-05-13T00:00:00.000Z", since: "kept" })).toBe(true);
    expect(isBefore(known, { at: "2026-05-12T23:00:00.000Z", since: "kept" })).toBe(false);
    expect(isBefore(known, null)).toBe(false);
  });

  it("is said in words", () => {
    const said = (text: string) =>
      knownWords(readKnownAt(text) as NonNullable<ReturnType<typeof readKnownAt>>);
    expect(said("2026-05-12")).toBe("12 May 2026, until midnight (UTC)");
    expect(said("2026-05-12T14:30_Europe/Berlin")).toBe("12 May 2026, 14:30 (Europe/Berlin)");
  });

  it("stays in the links of the page, beside the day looked at", () => {
    expect(keepAsOf("/lines?by=score#top", null, "2026-05-12")).toBe("/lines?by=score&known=2026-05-12#top");
    expect(keepAsOf("/lines", "2026-05-01", "2026-05-12")).toBe("/lines?asOf=2026-05-01&known=2026-05-12");
    expect(keepAsOf("/lines?known=2026-01-01", null, "2026-05-12")).toBe("/lines?known=2026-01-01");
    expect(keepAsOf("https://elsewhere.example/", null, "2026-05-12")).toBe("https://elsewhere.example/");
  });

  it("is told by exactly the pages that read it", () => {
    const pages = readdirSync("app/(workspace)", { recursive: true, encoding: "utf8" })
      .filter((name) => /(^|\/)page\.tsx$/.test(name))
      .map((name) => join("app/(workspace)", name));
    expect(pages.length).toBeGreaterThan(60);
    for (const page of pages) {
      const path = page
        .replace("app/(workspace)", "")
        .replace(/\/page\.tsx$/, "")
        .replace(/\[\w+\]/g, "an-id");
      const reads = readFileSync(page, "utf8").includes("export default lookingBack(");
      expect({ path, looksBack: looksBack(path) }).toEqual({ path, looksBack: reads });
    }
  });
});
