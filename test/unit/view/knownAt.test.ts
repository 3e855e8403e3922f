import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { keepAsOf } from "@/lib/view/keepAsOf";
import { knownWords, looksBack, readKnownAt } from "@/lib/view/knownAt";

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
    ])
      expect(readKnownAt(text)).toBeNull();
  });

  it("is said in words", () => {
    const said = (text: string) =>
      knownWords(readKnownAt(text) as NonNullable<ReturnType<typeof readKnownAt>>);
    expect(said("2026-05-12")).toBe("12 May 2026");
    expect(said("2026-05-12T14:30")).toBe("12 May 2026, 14:30 UTC");
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
