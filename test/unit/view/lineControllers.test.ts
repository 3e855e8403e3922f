import { describe, expect, it } from "vitest";
import {
  type ControllerFacts,
  controllerBlockers,
  floorState,
  leadController,
  lineFloorWord,
} from "@/lib/view/lineControllers";

const controller = (designation: string, given: Partial<ControllerFacts>): ControllerFacts => ({
  designation,
  model: "Slate 5",
  firmware: 24,
  memoryPercent: 60,
  axes: 6,
  ...given,
});

describe("the leading controller of a line", () => {
  it("is the model that drives most axes, not the one there are most of", () => {
    const lead = leadController([
      controller("K1", { axes: 20, firmware: 22 }),
      controller("K2", { model: "Slate 7", axes: 6, firmware: 30 }),
      controller("K3", { model: "Slate 7", axes: 5, firmware: 30 }),
    ]);
    expect(lead).toEqual({
      model: "Slate 5",
      controllers: 1,
      firmware: { low: 22, high: 22 },
      unknownFirmware: 0,
    });
  });

  it("tells the known levels apart from those nobody read", () => {
    const list = [22, null, 21, null].map((firmware, i) => controller(`K${i}`, { firmware }));
    expect(leadController(list)).toMatchObject({ firmware: { low: 21, high: 22 }, unknownFirmware: 2 });
    expect(leadController([controller("K1", { firmware: null })])).toMatchObject({ firmware: null });
  });

  it("is none on a line without controllers", () => {
    expect(leadController([])).toBeNull();
  });
});

describe("the firmware floor", () => {
  it("is met at the level itself", () => {
    expect(floorState(24, 24)).toBe("meets");
    expect(floorState(23, 24)).toBe("below");
  });

  it("leaves an unread level unknown, and says so when no floor is recorded", () => {
    expect(floorState(null, 24)).toBe("unknown");
    expect(floorState(12, null)).toBe("no-floor");
  });
});

describe("what blocks new drives", () => {
  it("names the controllers below the floor, unread, or at 85 % of memory and more", () => {
    const list = [
      controller("K1", { firmware: 21, memoryPercent: 84.9 }),
      controller("K2", { firmware: null, memoryPercent: null }),
      controller("K3", { memoryPercent: 85 }),
    ];
    expect(controllerBlockers(list, 24)).toEqual({
      belowFloor: ["K1"],
      unknownFirmware: ["K2"],
      memoryTight: ["K3"],
      unknownMemory: ["K2"],
    });
  });
});

describe("a line's standing in a word", () => {
  const word = (levels: (number | null)[], floor: number | null) =>
    lineFloorWord(
      levels.map((firmware, i) => controller(`K${i}`, { firmware })),
      floor,
    );

  it("is that of its worst controller, and unread is not fine", () => {
    expect(word([24, null, 23], 24)).toBe("below the floor");
    expect(word([24, null], 24)).toBe("not all read");
    expect(word([24, 30], 24)).toBe("at the floor or above");
    expect(word([], 24)).toBe("no controller recorded");
    expect(word([12], null)).toBe("no floor recorded");
  });
});
