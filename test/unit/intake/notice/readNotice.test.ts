import { describe, expect, it } from "vitest";
import { findDates } from "@/lib/intake/notice/findDates";
import { findParts } from "@/lib/intake/notice/findParts";
import { daySpanAfter, proposedDay, readingsOf } from "@/lib/intake/notice/noticeDate";
import { matchParts, type NamedPart, readPatterns, successorKey } from "@/lib/intake/notice/partPattern";
import { readNotice } from "@/lib/intake/notice/readNotice";
import { textOfFile } from "@/lib/intake/notice/tableText";

const part = (number: string, family: string, aliases: string[] = []) => ({
  ...{
    id: number,
    number,
    family,
    aliases,
    maker: number.startsWith("TM") ? "Tarnholt Motion" : "Brindlewick",
  },
});
const SIZES = ["010", "020", "040", "080"];
const PARTS = [
  ...SIZES.map((size) => part(`TM-HR-${size}`, "Heron R", [`Heron R ${size}`])),
  ...SIZES.map((size) => part(`TM-HE-${size}`, "Heron E")),
  ...SIZES.map((size) => part(`BW-OK-${size}`, "Oak")),
];

const numbers = (list: string, parts: readonly NamedPart[] = PARTS) => {
  const read = readPatterns(list);
  return read.ok ? matchParts(read.value, parts).parts.map(({ number }) => number) : read.error;
};

describe("a list of parts", () => {
  it("takes numbers in any spelling, families, wildcards, ranges, and takes out again", () => {
    expect(numbers("tm hr 020")).toEqual(["TM-HR-020"]);
    expect(numbers("TM-HR-020-B1")).toEqual(["TM-HR-020"]);
    expect(numbers("heron r")).toEqual(SIZES.map((size) => `TM-HR-${size}`));
    expect(numbers("TM-HR-*")).toEqual(SIZES.map((size) => `TM-HR-${size}`));
    expect(numbers("TM-H?-020")).toEqual(["TM-HR-020", "TM-HE-020"]);
    expect(numbers("TM-HR-010..040")).toEqual(["TM-HR-010", "TM-HR-020", "TM-HR-040"]);
    expect(numbers("TM-HR-020 .. TM-HR-080; !TM-HR-040")).toEqual(["TM-HR-020", "TM-HR-080"]);
    expect(numbers("")).toEqual([]);
  });

  it("says what cannot be used, and which entry takes nothing", () => {
    expect(numbers("*")).toMatch(/every part/);
    expect(numbers("TM-HR-040..010")).toMatch(/no range/);
    expect(numbers("TM-HR-010..BW-OK-020")).toMatch(/no range/);
    const read = readPatterns("TM-HR-*, XX-99");
    expect(read.ok && matchParts(read.value, PARTS).empty).toEqual(["XX-99"]);
  });

  it("does not let a point of a number stand for any letter", () => {
    expect(numbers("TM.HR.*")).toEqual(numbers("TM-HR-*"));
    expect(numbers("TM-H.-020*")).toEqual([]);
  });

  it("leads from a part to the successor of its own size", () => {
    const read = readPatterns("TM-HR-*");
    const patterns = read.ok ? read.value : [];
    expect(successorKey("TM-HR-020", patterns, "TM-HE-*")).toBe("TMHE020");
    expect(successorKey("TM-HR-020", patterns, "TM-HE-040")).toBe("TMHE040");
    expect(successorKey("BW-OK-020", patterns, "TM-HE-*")).toBeNull();
  });
});

describe("parts in a text", () => {
  it("finds wildcards, ranges, placeholders and numbers, each once", () => {
    expect(findParts("All TM-HR-* units, for example TM-HR-020.", PARTS).patterns).toEqual(["TM-HR-*"]);
    expect(findParts("TM-HR-010 to TM-HR-040", PARTS).patterns).toEqual(["TM-HR-010..TM-HR-040"]);
    expect(findParts("type TM-HR-0xx", PARTS).patterns).toEqual(["TM-HR-0??"]);
    expect(findParts("tm hr 020, Heron R 080 and TM_HR_010", PARTS).patterns).toEqual([
      "TM-HR-020",
      "TM-HR-080",
      "TM-HR-010",
    ]);
  });

  it("falls back on the family and names what is not on record", () => {
    expect(findParts("the whole Heron R range", PARTS).patterns).toEqual(["Heron R"]);
    expect(findParts("TM-HR-020 and TM-HX-500", PARTS).unknown).toEqual(["TM-HX-500"]);
    expect(findParts("Is it over? Call us.", PARTS)).toEqual({ patterns: [], unknown: [] });
  });
});

const dated = (text: string) =>
  findDates(text).map((found) => [found.kind, readingsOf(found, {}).map(({ on }) => on)]);

describe("dates in a text", () => {
  it("tells the days apart by the words beside them", () => {
    expect(
      dated("Last order 30 April 2027, last shipment 29 October 2027; repair until 31.12.2031."),
    ).toEqual([
      ["lastOrderOn", ["2027-04-30"]],
      ["lastShipOn", ["2027-10-29"]],
      ["repairUntilOn", ["2031-12-31"]],
    ]);
    expect(dated("Date: October 30th, 2026\nOrders are accepted until 2027-04-30.")).toEqual([
      ["noticeOn", ["2026-10-30"]],
      ["lastOrderOn", ["2027-04-30"]],
    ]);
    expect(dated("30 April 2027 is the day of the last order. Repairs end on 31 Dec 2031.")).toEqual([
      ["lastOrderOn", ["2027-04-30"]],
      ["repairUntilOn", ["2031-12-31"]],
    ]);
    expect(dated("Letzte Bestellung: 30.04.2027")).toEqual([["lastOrderOn", ["2027-04-30"]]]);
  });

  it("asks where a date can be read two ways", () => {
    expect(dated("last order 03/04/2027")).toEqual([["lastOrderOn", ["2027-04-03", "2027-03-04"]]]);
    expect(dated("last order 30/04/2027")).toEqual([["lastOrderOn", ["2027-04-30"]]]);
    expect(dated("last order March 2027")).toEqual([["lastOrderOn", ["2027-03-01", "2027-03-31"]]]);
    expect(dated("last order end of February 2028")).toEqual([["lastOrderOn", ["2028-02-29"]]]);
    expect(dated("last order Q1 2027")).toEqual([["lastOrderOn", ["2027-01-01", "2027-03-31"]]]);
  });

  it("counts from the notice or the last order, by the calendar", () => {
    const found = findDates(
      "Last orders six months after this notice; last deliveries 12 months after the notice.",
    );
    expect(found.map(({ kind, says }) => [kind, says])).toEqual([
      ["lastOrderOn", { count: 6, unit: "month", base: "noticeOn" }],
      ["lastShipOn", { count: 12, unit: "month", base: "noticeOn" }],
    ]);
    // Nothing is counted from a day nobody knows.
    expect(proposedDay("lastOrderOn", found, {})).toEqual([]);
    expect(proposedDay("lastOrderOn", found, { noticeOn: "2026-08-31" }).map(({ on }) => on)).toEqual([
      "2027-02-28",
    ]);
    expect(proposedDay("lastShipOn", found, { noticeOn: "2024-02-29" }).map(({ on }) => on)).toEqual([
      "2025-02-28",
    ]);
    expect(findDates("Repairs end two years after the last shipment.")[0]).toMatchObject({
      kind: "repairUntilOn",
      says: { count: 2, unit: "year", base: "lastShipOn" },
    });
  });

  it("has common practice's six and twelve months (JESD48B as published) from a notice at a month's end", () => {
    expect(daySpanAfter("2026-10-30", { count: 6, unit: "month" })).toBe("2027-04-30");
    expect(daySpanAfter("2026-10-30", { count: 12, unit: "month" })).toBe("2027-10-30");
    expect(daySpanAfter("2027-08-30", { count: 6, unit: "month" })).toBe("2028-02-29");
  });
});

const BULLETIN = `Tarnholt Motion
Bulletin 2026-14 of 30 October 2026

The drives TM-HR-* leave production.
Last orders are accepted six months after this notice.
Last shipment: 29 October 2027
Repair until 31 December 2031
Successor: TM-HE-*`;

describe("a whole notice", () => {
  it("proposes document, maker, parts, successor and dates", () => {
    const read = readNotice(BULLETIN, PARTS);
    expect(read).toMatchObject({
      ...{ document: "Bulletin 2026-14", maker: "Tarnholt Motion", patterns: ["TM-HR-*"] },
      successor: "TM-HE-*",
    });
    const noticeOn = proposedDay("noticeOn", read.dates, {})[0]?.on ?? null;
    expect(noticeOn).toBe("2026-10-30");
    expect(proposedDay("lastOrderOn", read.dates, { noticeOn })[0]?.on).toBe("2027-04-30");
    expect(proposedDay("lastShipOn", read.dates, {})[0]?.on).toBe("2027-10-29");
    expect(proposedDay("repairUntilOn", read.dates, {})[0]?.on).toBe("2031-12-31");
  });

  it("is empty, and no refusal, where nothing is found", () => {
    expect(readNotice("", PARTS)).toEqual({
      ...{ document: "", maker: "", patterns: [], unknown: [], successor: "", dates: [] },
    });
  });

  it("reads a table as lines beside their headers", async () => {
    const file =
      "Part;Last order;Last ship;Successor\nTM-HR-010;30.04.2027;29.10.2027;TM-HE-010\nTM-HR-020;30.04.2027;29.10.2027;TM-HE-020\n";
    const text = await textOfFile("bulletin.csv", new TextEncoder().encode(file));
    const read = readNotice(text.ok ? text.value : "", PARTS);
    expect(read.patterns).toEqual(["TM-HR-010", "TM-HR-020"]);
    expect(read.successor).toBe("TM-HE-*");
    expect(proposedDay("lastOrderOn", read.dates, {}).map(({ on }) => on)).toEqual(["2027-04-30"]);
    expect(proposedDay("lastShipOn", read.dates, {}).map(({ on }) => on)).toEqual(["2027-10-29"]);
  });
});
