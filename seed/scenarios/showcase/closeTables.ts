import { cutoverRows, cutoverStepRows } from "@/seed/scenarios/showcase/cutovers";
import { exchangedUnits } from "@/seed/scenarios/showcase/exchangedUnits";
import type { PlannedPosition } from "@/seed/scenarios/showcase/positions";
import { openPointRows, projectRiskRows } from "@/seed/scenarios/showcase/projectPoints";
import type { UnitTables } from "@/seed/scenarios/showcase/units";

/** Cutovers, what is open and at risk, and what came out and went in, of the running projects. */
export function closeTables(seed: number, positions: readonly PlannedPosition[], tables: UnitTables) {
  const { removed, fitted } = exchangedUnits(seed, positions, tables);
  return {
    Cutover: cutoverRows(),
    CutoverStep: cutoverStepRows(),
    OpenPoint: openPointRows(),
    ProjectRisk: projectRiskRows(),
    RemovedUnit: removed,
    FittedUnit: fitted,
  };
}
