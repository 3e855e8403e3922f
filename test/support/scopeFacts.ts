import type { ControllerFacts, Rule } from "@/lib/retrofit/compatibility/facts";
import { parseFirmwareLevel } from "@/lib/retrofit/firmwareLevel";
import type { PartFact, ScopeAxis, ScopeFacts } from "@/lib/retrofit/scope/scopeFacts";
import { compatibilityRuleRows } from "@/seed/scenarios/showcase/compatibilityRules";

/** The rules of the invented company, in force. */
export const seededRules = compatibilityRuleRows().map(
  ({ terms, ...row }) => ({ ...row, terms: JSON.parse(terms) }) as unknown as Rule,
);

/** A drive; its number doubles as its id. */
export function part(number: string, given: Partial<PartFact> = {}): PartFact {
  return {
    ...{ id: number, number, itemClass: "drive", family: "Heron R", price: null, pricedOn: null },
    ...{ leadWeeks: null, leadWeeksP80: null, stage: "own-stock" },
    ...given,
  };
}

export const oldDrive = part("TM-HR-020");
export const newDrive = part("TM-HE-020", {
  ...{
    family: "Heron E",
    stage: "open",
    price: 2500,
    pricedOn: "2026-10-01",
    leadWeeks: 9,
    leadWeeksP80: 16,
  },
});

export function axis(code: string, given: Partial<ScopeAxis> = {}): ScopeAxis {
  return {
    ...{ id: code, lineCode: "NOR-01", machine: "M1", code, drive: oldDrive, feedback: "resolver" },
    motor: { number: "DV-WR-20", family: "Wren", powerKw: 2 },
    ...{ ring: null, network: null, controller: "K1", evidence: "documented" },
    ...given,
  };
}

export function controller(given: Partial<ControllerFacts> = {}): ControllerFacts {
  return {
    ...{ designation: "K1", model: "Slate 7", level: parseFirmwareLevel("30"), memoryPercent: 40 },
    ...{ hardware: null, axisLimit: null, axesInAll: null },
    ...{ evidence: "documented", readOn: null, leads: true, cards: [], racks: [], rings: [] },
    groups: [
      {
        ...{ axes: 1, drive: "Heron R", targets: [], motor: "Wren", powerKw: 2, feedback: "resolver" },
        evidence: "documented",
      },
    ],
    ...given,
  } as ControllerFacts;
}

/** A line of the axes given, with a controller that runs the new drives. */
export function line(axes: readonly ScopeAxis[], given: Partial<ScopeFacts> = {}): ScopeFacts {
  return {
    ...{ lineCode: "NOR-01", asOf: "2026-11-30", axes, items: [], controllers: [controller()] },
    ...{ rules: seededRules, parts: [oldDrive, newDrive] },
    successors: [{ partId: oldDrive.id, successorId: newDrive.id, condition: null }],
    ...given,
  };
}
