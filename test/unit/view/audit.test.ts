import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { auditChanges, fieldWords, reasonOf, valueWords } from "@/lib/view/audit/auditChanges";
import { readAuditQuestion } from "@/lib/view/audit/auditQuestion";
import { AREAS, deedWords } from "@/lib/view/audit/deedWords";

/** Deeds as the sources write them out. */
function deedsInSources(): string[] {
  const files = ["lib/data", "lib/access"].flatMap((folder) =>
    readdirSync(folder, { recursive: true, encoding: "utf8" })
      .filter((name) => name.endsWith(".ts"))
      .map((name) => join(folder, name)),
  );
  const found = files.flatMap((file) => {
    const text = readFileSync(file, "utf8");
    const written = text.matchAll(/(?:deed: ?|deedOf\(|movedLots(?:Back)?\(|entry\()"([a-z-]+:[a-zA-Z-]+)"/g);
    return [...written].map(([, deed = ""]) => deed);
  });
  // Rights a person needs are written alike.
  const rights =
    /^(money:read|event:write|stock:write|register:import|line:write|project:write|people:write)$/;
  return [...new Set(found)].filter((deed) => !rights.test(deed));
}

describe("deeds in words", () => {
  it("has words for each deed the sources write", () => {
    const deeds = deedsInSources();
    expect(deeds.length).toBeGreaterThan(120);
    const bare = deeds.filter((deed) => {
      const [area = "", what = ""] = deed.split(":");
      return AREAS[area]?.deeds[what] === undefined;
    });
    expect(bare).toEqual([]);
  });

  it("says what it cannot name", () => {
    expect(deedWords("stock:lot")).toBe("Corrected a bin");
    expect(deedWords("gate:moved-on")).toBe("Gates: moved on");
    expect(deedWords("other:thing")).toBe("Changed something (other:thing)");
  });
});

describe("what a change set", () => {
  it("is told field by field, only what differs, and unknown as unknown", () => {
    const before = { state: "on_hold", quantity: 1, lastPoweredOn: null, countedOn: "2026-05-12" };
    expect(auditChanges(before, { ...before, quantity: 7, lastPoweredOn: "2026-11-30" })).toEqual([
      { field: "Quantity", from: "1", to: "7" },
      { field: "Last powered on", from: "not known", to: "30 Nov 2026" },
    ]);
  });

  it("of something new has no former side, and of something removed no later one", () => {
    expect(auditChanges(null, { name: "Press", lineId: "x" })).toEqual([
      { field: "Name", from: null, to: "Press" },
    ]);
    expect(auditChanges({ name: "Press" }, null)).toEqual([{ field: "Name", from: "Press", to: null }]);
  });

  it("is words whatever was kept", () => {
    expect(valueWords(["a", null, { partId: 1, ok: true }])).toBe("a, not known, part id 1, ok yes");
    expect(valueWords([])).toBe("none");
    expect(valueWords("x".repeat(400))).toHaveLength(302);
    expect(fieldWords("costPerHour")).toBe("Cost per hour");
  });

  it("is told with the reason of whoever did it", () => {
    expect(reasonOf("counted wrong", null, null)).toBe("counted wrong");
    expect(reasonOf(null, null, { reason: "too dear" })).toBe("too dear");
    expect(reasonOf(null, { a: 1 }, { reason: " " })).toBeNull();
  });
});

describe("a question in the address", () => {
  it("narrows by what it says rightly and ignores the rest", () => {
    const id = "0190a1b2-0000-7000-8000-000000000001";
    expect(
      readAuditQuestion({ of: "line", id, who: "Ana", from: "2026-05-01", until: "x", after: "y" }),
    ).toEqual({
      ...{ thing: { kind: "line", id }, who: "Ana", from: "2026-05-01" },
    });
    expect(readAuditQuestion({ of: "secret", id }).thing).toBeUndefined();
  });
});
