import type { RuleKind, RuleTerms } from "@/lib/schema/compatibilityRule";
import type { CompatibilityRuleRow } from "@/seed/ruleTables";
import { seedId } from "@/seed/seedId";

type Spec = {
  readonly [K in RuleKind]: Pick<CompatibilityRuleRow, "code" | "note" | "source" | "evidence"> & {
    readonly kind: K;
    readonly terms: RuleTerms[K];
  };
}[RuleKind];

const LIST = "Mossgate compatibility list, edition 7";

const RULES: readonly Spec[] = [
  {
    ...{ code: "R1", kind: "controller_floor", source: LIST, evidence: "documented" },
    terms: {
      families: ["Heron E", "Elm"],
      controllers: [
        { model: "Slate 5", level: "24" },
        { model: "Slate 7", level: "27" },
      ],
    },
    note: "Drives on Ethernet run on a Slate 5 from 24 or on a Slate 7.",
  },
  {
    ...{ code: "R2", kind: "ceiling", source: LIST, evidence: "documented" },
    terms: { model: "Slate 3", level: "18" },
    note: "A Slate 3 cannot be raised beyond 18: the controller is swapped.",
  },
  {
    ...{ code: "R3", kind: "memory_growth", evidence: "inferred" },
    terms: { model: "Slate 5", level: "24", factor: 1.15, cautionPercent: 85, blockedPercent: 95 },
    note: "The same program takes more memory from 24 on.",
    source: "Factor: own trials on copies of four programs. Limits: common practice, no source",
  },
  {
    ...{ code: "R4", kind: "card_lost", source: LIST, evidence: "documented" },
    terms: { level: "24", card: "Link R", letter: "C", racks: "Pebble" },
    note: "From 24 on, a Link R older than C is not run, and the Pebble racks behind it are cut off.",
  },
  {
    ...{ code: "R5", kind: "motor_match", evidence: "documented" },
    terms: { motor: "Wren", drive: "Heron E", fit: "adapter", upToKw: 3 },
    note: "A Wren runs on Heron E with a feedback adapter up to 3 kW; above, no match is known.",
    source: "Tarnholt application note 31",
  },
  {
    ...{ code: "R6", kind: "hardware_revision", evidence: "documented" },
    terms: { family: "Heron R", revision: "C3", controllers: [{ model: "Slate 5", level: "21" }] },
    note: "The last batch of Heron R is hardware C3 and needs a Slate 5 from 21.",
    source: "Tarnholt notice of discontinuance, annex B",
  },
  {
    ...{ code: "R7", kind: "ring_whole", terms: {}, evidence: "assumed" },
    note: "A ring is in series: its axes are converted together, or a second network runs beside it.",
    source: "Common practice, no source",
  },
  {
    ...{ code: "R8", kind: "axis_ceiling", source: LIST, evidence: "documented" },
    terms: { model: "Slate 5", olderThan: "C", belowLevel: null, axes: 16 },
    note: "A Slate 5 of hardware older than C has the memory for 16 axes at most.",
  },
];

/** The compatibility rules of the invented company, each in its first version. */
export function compatibilityRuleRows(): CompatibilityRuleRow[] {
  return RULES.map(({ code, kind, terms, note, source, evidence }) => ({
    id: seedId("CompatibilityRule", code),
    ...{ code, version: 1, kind, terms: JSON.stringify(terms), note, source, evidence },
    changedAt: "2026-11-02T08:00:00.000Z",
    changedBy: "Head of motion engineering",
  }));
}
