import { describe, expect, test } from "vitest";
import type { ControllerFacts, Rule } from "@/lib/retrofit/compatibility/facts";
import { parseFirmwareLevel } from "@/lib/retrofit/firmwareLevel";
import { misfitAt } from "@/lib/retrofit/pieceFits";

const rule: Rule = {
  ...{ code: "R6", kind: "hardware_revision", version: 1, evidence: "documented" },
  terms: { family: "Heron R", revision: "C3", controllers: [{ model: "Slate 5", level: "21" }] },
};

function controller(designation: string, level: string | null, drive = "Heron R"): ControllerFacts {
  const group = { axes: 6, drive, targets: [], motor: null, powerKw: null, feedback: null } as const;
  return {
    ...{ designation, model: "Slate 5", level: parseFirmwareLevel(level), memoryPercent: null },
    ...{ evidence: "measured", readOn: null, leads: false, cards: [], racks: [], rings: [] },
    ...{ hardware: null, axisLimit: null, axesInAll: 6 },
    groups: [{ ...group, evidence: "documented" }],
  };
}

const at = (revision: string | null, controllers: readonly ControllerFacts[]) =>
  misfitAt({ family: "Heron R", revision }, [rule], controllers);

describe("a piece at another site", () => {
  test("fits where every controller of its family runs its hardware", () => {
    expect(at("C3", [controller("TAD-K1", "22")])).toBeNull();
    expect(at("B2", [controller("TAD-K1", "20")])).toBeNull();
  });
  test("does not where one would not run it, and says which and how many axes", () => {
    const found = at("C3", [controller("TAD-K1", "20"), controller("TAD-K2", "22")]);
    expect(found?.code).toBe("R6");
    expect(found?.why).toMatch(/TAD-K1 \(6 axes\)/);
  });
  test("is not taken to fit when its revision or the level is not known", () => {
    expect(at(null, [controller("TAD-K1", "20")])?.why).toMatch(/revision not known/);
    expect(at("C3", [controller("TAD-K1", null)])).not.toBeNull();
    expect(at(null, [controller("TAD-K1", "22")])).toBeNull();
  });
  test("is not asked about drives of another family", () => {
    expect(at("C3", [controller("TAD-K1", "20", "Oak")])).toBeNull();
    expect(
      misfitAt({ family: "Oak", revision: "C3" }, [rule], [controller("TAD-K1", "20", "Oak")]),
    ).toBeNull();
  });
});
