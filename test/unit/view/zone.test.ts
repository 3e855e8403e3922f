import { expect, it } from "vitest";
import { commonZone, zonedMoment } from "@/lib/view/zone";

it("of places in several zones that of most counts, of equal ones the first, and UTC where there is none", () => {
  expect(commonZone(["Europe/Berlin", "America/Chicago", "America/Chicago"])).toBe("America/Chicago");
  expect(commonZone(["Europe/Berlin", "America/Chicago"])).toBe("Europe/Berlin");
  expect(commonZone([])).toBe("UTC");
});

it("an instant says whose clock it is told by, and one that is not known says only that", () => {
  expect(zonedMoment("2026-04-03T12:05:00Z", "Europe/Berlin")).toBe("3 Apr 2026, 14:05 (Europe/Berlin)");
  expect(zonedMoment(null, "Europe/Berlin")).not.toContain("Berlin");
});
