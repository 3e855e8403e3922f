import { describe, expect, it } from "vitest";
import { belowFloor, type ControllerFacts, leadController, lineFloorWord } from "@/lib/view/lineControllers";

const controller = (designation: string, given: Partial<ControllerFacts>): ControllerFacts => ({
  designation,
  model: "Slate 5",
  firmware: 24,
  memoryPercent: 60,
  axes: 6,
  step: "none",
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

const withSteps = (steps: readonly ControllerFacts["step"][]) =>
  steps.map((step, i) => controller(`K${i}`, { step }));

describe("controllers that do not run the new drives as they are", () => {
  it("are those to raise and those to swap, not the unread", () => {
    expect(belowFloor(withSteps(["none", "raise", "swap", "unknown", "no-rule"]))).toBe(2);
  });
});

describe("a line's standing in a word", () => {
  it("is that of its worst controller, and unread is not fine", () => {
    expect(lineFloorWord(withSteps(["none", "raise", "swap"]))).toBe("a controller to swap");
    expect(lineFloorWord(withSteps(["none", "unknown", "raise"]))).toBe("below the floor");
    expect(lineFloorWord(withSteps(["none", "unknown"]))).toBe("not all read");
    expect(lineFloorWord(withSteps(["none", "none"]))).toBe("at the floor or above");
    expect(lineFloorWord(withSteps(["no-rule"]))).toBe("no floor rule");
    expect(lineFloorWord([])).toBe("no controller recorded");
  });
});
