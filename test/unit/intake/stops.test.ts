import { describe, expect, it } from "vitest";
import { hoursBetween, instantsOf } from "@/lib/intake/localTime";
import { rowsOf } from "@/test/support/readRows";

describe("19, stops", () => {
  const stop = (start: string, end: string | null, hours: string | null) =>
    rowsOf("events", [
      ["Site", "Work order", "Date", "End", "Downtime h"],
      ["VEL", "1", start, end, hours],
    ])[0];

  it("run over midnight where the end is a time of day before the start's", () => {
    expect(stop("03.04.2026 23:50", "00:20", null)?.values).toMatchObject({
      endedAt: "2026-04-04T00:20",
      downtimeHours: 0.5,
    });
  });

  it("that end before they start go into quarantine with the reason", () => {
    const row = stop("03.04.2026 10:00", "03.04.2026 09:00", "2");
    expect(row).toMatchObject({
      state: "warning",
      values: { setAside: "ends before it starts", downtimeHours: null },
    });
  });

  it("of 999 h have no known length, those over thirty days are looked at", () => {
    expect(stop("03.04.2026 10:00", null, "999")).toMatchObject({
      state: "warning",
      values: { downtimeHours: null },
    });
    expect(stop("03.04.2026 10:00", null, "800")).toMatchObject({
      state: "warning",
      values: { downtimeHours: 800 },
    });
  });

  it("that differ from their own start and end are told", () => {
    expect(stop("03.04.2026 10:00", "03.04.2026 12:00", "5")).toMatchObject({
      ...{ state: "warning", values: { downtimeHours: 5 } },
    });
  });

  it("over the change of summer time are an hour shorter or longer than the clock says", () => {
    // EU: clocks go from 02:00 to 03:00 on the last Sunday of March and back on the last of October.
    expect(hoursBetween("2026-03-29T01:30", "2026-03-29T03:30", "Europe/Warsaw")).toBe(1);
    expect(hoursBetween("2026-10-25T01:30", "2026-10-25T03:30", "Europe/Warsaw")).toBe(3);
    expect(instantsOf("2026-10-25T02:30", "Europe/Warsaw")).toHaveLength(2);
    expect(instantsOf("2026-03-29T02:30", "Europe/Warsaw")).toHaveLength(0);
  });
});
