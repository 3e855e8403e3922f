import { lineId, siteId } from "@/seed/scenarios/showcase/sites";
import { seedId } from "@/seed/seedId";
import type { ObligationRow } from "@/seed/siteTables";

/**
 * The dates that bind the invented company whatever a line loses.
 *
 * The mission time of 20 years is that of ISO 13849-1, from memory.
 */
export function obligationRows(): ObligationRow[] {
  return [
    {
      id: seedId("Obligation", "THO-01/mission time"),
      siteId: siteId("THO"),
      lineId: lineId("THO-01"),
      kind: "safety",
      title: "Safety relays and guard switches reach their mission time of 20 years",
      dueOn: "2027-09-30",
      source: "Invented machine file THO-01, sheet 7, after ISO 13849-1 (from memory)",
      owner: "Machine safety officer THO",
      evidence: "documented",
      recordedOn: "2026-05-12",
      doneOn: null,
    },
    {
      id: seedId("Obligation", "OST-06/guards"),
      siteId: siteId("OST"),
      lineId: lineId("OST-06"),
      kind: "legal",
      title: "Fixed guards at the infeed to be in place by order of the inspectorate",
      dueOn: "2027-05-31",
      source: "Invented order of the labour inspectorate OST 88/2026, point 3",
      owner: "Plant manager OST",
      evidence: "documented",
      recordedOn: "2026-10-19",
      doneOn: null,
    },
  ];
}
