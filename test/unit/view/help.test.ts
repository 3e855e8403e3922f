import { readdirSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { helpOf, helpTexts } from "@/lib/view/help/helpOf";

const FRAME = "app/(workspace)";
/** Pages that show nothing of their own. */
const BARE = [""];

/** Address of each page of the frame, with a star for each part that differs. */
const pages = readdirSync(FRAME, { recursive: true, encoding: "utf8" })
  .filter((name) => /(^|\/)page\.tsx$/.test(name))
  .map((name) => `/${name}`.replace(/\/page\.tsx$/, "").replace(/\[[^\]]+\]/g, "*"))
  .filter((page) => !BARE.includes(page));

describe("the help of the screens", () => {
  it("is there for each page, once, and for no other", () => {
    expect(pages.length).toBeGreaterThan(60);
    expect(helpTexts.map(({ page }) => page).sort()).toEqual([...pages].sort());
  });

  it("leads only to pages that are there, and never to where the reader is", () => {
    for (const { page, next } of helpTexts) {
      expect(next.length, page).toBeGreaterThan(0);
      for (const { href } of next) {
        expect(pages, `${page} leads to ${href}`).toContain(href);
        expect(href).not.toBe(page);
      }
    }
  });

  it("is found by address, a page of its own before one of many", () => {
    expect(helpOf("/plans/inputs")?.title).toBe("Planning inputs");
    expect(helpOf("/plans/0190a1b2")?.title).toBe("A plan");
    expect(helpOf("/projects/RET-01/axes/0190")?.title).toBe("Record of an axis");
    expect(helpOf("/nowhere")).toBeNull();
  });

  it("is made of short whole sentences", () => {
    const sentences = helpTexts.flatMap(({ about, read, from }) => [about, ...read, from]);
    for (const sentence of sentences) {
      expect(sentence).toMatch(/^[A-ZÄÖÜ].*[.?]$/);
      for (const one of sentence.split(/[.?:;] /)) expect(one.split(" ").length, one).toBeLessThan(33);
    }
  });
});
