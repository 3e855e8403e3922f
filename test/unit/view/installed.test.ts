import { describe, expect, it } from "vitest";
import { readAxisFilter } from "@/lib/view/axisList";
import { type InstalledRow, installedHref, knownShare, readInstalledLevel } from "@/lib/view/installed";
import { gearingWords, stayWords, travelWords } from "@/lib/view/machine";
import { backupWords, binWords, type CardBackup, type CardLot, siteWords } from "@/lib/view/nightCard";
import { findingWords, neighbourWords, type RingSheetRow, tiedTogether } from "@/lib/view/ring";

const filterOf = (query: string) => readAxisFilter(new URLSearchParams(query));

describe("the address of the list of axes", () => {
  it("without anything chooses nothing, by place", () => {
    expect(filterOf("")).toEqual({
      ...{ site: null, line: null, family: null, network: null, panel: null, evidence: null },
      ...{ text: "", sort: "place", descending: false },
    });
  });

  it("is read where it can be, and chooses nothing where it cannot", () => {
    expect(filterOf("network=none&evidence=assumed&axes.sort=year.desc")).toMatchObject({
      ...{ network: "none", evidence: "assumed", sort: "year", descending: true },
    });
    expect(filterOf("network=x&evidence=x&axes.sort=drive.desc&site=")).toMatchObject({
      ...{ network: null, evidence: null, sort: "place", site: null },
    });
    expect(filterOf(`q=${"x".repeat(500)}`).text).toHaveLength(100);
  });
});

describe("the installed map", () => {
  const row = { id: "an-id", code: "A/1" } as InstalledRow;

  it("goes down a level by code, and to a machine by id", () => {
    expect(installedHref("group", row)).toBe("/installed?site=A%2F1");
    expect(installedHref("site", row)).toBe("/installed?line=A%2F1");
    expect(installedHref("line", row)).toBe("/machines/an-id");
    expect(readInstalledLevel({ site: "A", line: "A-01" })).toEqual({ of: "line", code: "A-01" });
    expect(readInstalledLevel({})).toEqual({ of: "group" });
  });

  it("has no share of known places where there is no place", () => {
    const evidence = { measured: 1, documented: 2, inferred: 3, assumed: 6 };
    expect(knownShare({ evidence, places: 12 })).toBe(0.25);
    expect(knownShare({ evidence, places: 0 })).toBeNull();
  });
});

describe("words of a machine", () => {
  it("say what is not known", () => {
    expect(gearingWords({ motorRevs: 10, loadRevs: 3 })).toBe("10 : 3");
    expect(gearingWords({ motorRevs: 10, loadRevs: null })).toBe("not known");
    expect(travelWords({ unitsPerLoadRev: 400, travelUnit: "mm" })).toBe("400 mm");
    expect(travelWords({ unitsPerLoadRev: 400, travelUnit: null })).toBe("400 (unit not known)");
    expect(stayWords({ fromOn: null, untilOn: "2025-05-01" })).toBe(
      "from before records began until 1 May 2025",
    );
  });

  it("of a ring name the places, the addresses and the controller at its ends", () => {
    expect(findingWords({ kind: "gap", from: 3, to: 3 })).toBe("Place 3: no node is recorded.");
    expect(findingWords({ kind: "gap", from: 3, to: 5 })).toBe("Places 3 to 5: no node is recorded.");
    expect(findingWords({ kind: "address-doubled", address: 7, labels: ["A", "B"] })).toMatch(
      /^Address 7 .* A and B;/,
    );
    expect(neighbourWords("controller")).toBe("the controller");
    expect(neighbourWords(null)).toBe("not known");
  });

  it("name what a ring ties together once each", () => {
    const node = (machineCode: string, controller: string | null) =>
      ({ lineCode: "L-01", machineCode, controller }) as RingSheetRow;
    expect(tiedTogether([node("M2", "K1"), node("M1", "K1"), node("M1", null)])).toEqual({
      machines: ["L-01 / M1", "L-01 / M2"],
      controllers: ["K1"],
    });
  });
});

describe("words of the night card", () => {
  const copy: CardBackup = {
    ...{ id: "b", kind: "program", takenOn: "2026-05-30", keptAt: "shelf" },
    ...{ verifiedOn: null, sourceAvailable: false },
  };

  it("say how old a copy is, that it was never tried, and that it has no source", () => {
    expect(backupWords(copy, "2026-11-30")).toBe(
      "taken 30 May 2026, 6 months ago; never put back to try it; NO SOURCE: the copy can be loaded, not edited",
    );
    expect(backupWords({ ...copy, kind: "parameters", sourceAvailable: null }, "2026-11-30")).not.toMatch(
      /source/i,
    );
  });

  const lot: CardLot = {
    ...{ siteCode: "A", siteName: "Works A", bin: "E1", revision: "B2", state: "usable" },
    ...{ quantity: 3, works: 0.9 },
  };

  it("give a bin its pieces, revision and chance, and never a count nobody took", () => {
    expect(binWords(lot)).toBe("bin E1: 3 rev. B2 (90 % to work)");
    expect(binWords({ ...lot, works: 1, revision: "" })).toBe("bin E1: 3");
    const elsewhere = [lot, { ...lot, bin: "E2", works: 0.4 }, { ...lot, siteCode: "B", quantity: null }];
    expect(siteWords(elsewhere)).toBe("A 3 in E1, 3 in E2 (40 % to work); B an uncounted number in E1");
    expect(binWords({ ...lot, works: 1, quantity: null })).toBe("bin E1: not counted rev. B2");
  });
});
