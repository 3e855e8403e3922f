import { hoursAfter } from "@/lib/projects/cutover";
import { USUAL_CUTOVER } from "@/lib/projects/usualCutover";
import type { CutoverRow, CutoverStepRow } from "@/seed/closeTables";
import { projectId } from "@/seed/scenarios/showcase/projects";
import { siteSpec } from "@/seed/scenarios/showcase/sites";
import { seedId } from "@/seed/seedId";
import { zonedInstant } from "@/seed/zonedInstant";

interface CutoverSpec {
  readonly name: string;
  /** Readings of the site's clock. */
  readonly startsAt: string;
  readonly productionAt: string;
  readonly restoreHours: number;
  readonly marginHours: number;
  readonly testedOn: string | null;
  readonly testedBy: string;
  /** How much longer each step takes here than usual. */
  readonly stretch: number;
  /** Hours each step took beyond its plan, in their order; null is ahead. */
  readonly over: readonly number[] | null;
}

const PROJECT = "KAR-02-R1";

/** July is over, eleven hours later than planned; the second half lies ahead, and nobody tried its way back yet. */
const SPECS: readonly CutoverSpec[] = [
  {
    ...{ name: "First half, 22 axes", startsAt: "2026-07-13T06:00", productionAt: "2026-07-20T06:00" },
    ...{
      restoreHours: 20,
      marginHours: 6,
      testedOn: "2026-06-18",
      testedBy: "Controls engineer",
      stretch: 2.5,
    },
    over: [0, 0.5, 0, 1.5, 0, 2, 0, 1, 4.5, 1.5, 0, 0, 0, 0],
  },
  {
    ...{ name: "Second half, 20 axes", startsAt: "2026-12-27T06:00", productionAt: "2027-01-03T22:00" },
    ...{ restoreHours: 24, marginHours: 8, testedOn: null, testedBy: "", stretch: 2.5, over: null },
  },
];

const PHONES: Readonly<Record<string, string>> = {
  "Project lead": "+46 555 0110",
  "Controls engineer": "+46 555 0114",
  "Controls engineer, integrator": "+46 555 0114",
  "Electrician in charge": "+46 555 0121",
  Electricians: "+46 555 0121",
  Mechanics: "+46 555 0130",
  "Machine-safety engineer": "+46 555 0142",
};

const cutoverId = ({ name }: CutoverSpec): string => seedId("Cutover", `${PROJECT}/${name}`);
const at = (reading: string): string => zonedInstant(reading, siteSpec("KAR").timeZone);

export function cutoverRows(): CutoverRow[] {
  return SPECS.map((spec) => ({
    ...{ id: cutoverId(spec), projectId: projectId(PROJECT), name: spec.name },
    ...{ startsAt: at(spec.startsAt), productionAt: at(spec.productionAt) },
    ...{ restoreHours: spec.restoreHours, marginHours: spec.marginHours },
    ...{ restoreTestedOn: spec.testedOn, restoreTestedBy: spec.testedBy },
  }));
}

export function cutoverStepRows(): CutoverStepRow[] {
  return SPECS.flatMap(stepsOf);
}

/** The usual steps, stretched; what one took longer moves all that follow. */
function stepsOf(spec: CutoverSpec): CutoverStepRow[] {
  const start = at(spec.startsAt);
  let late = 0;
  return USUAL_CUTOVER.map(({ title, afterHours, hours, ...step }, i) => {
    const planned = { afterHours: afterHours * spec.stretch, hours: hours * spec.stretch };
    const over = spec.over?.[i] ?? null;
    const startedAt = over === null ? null : hoursAfter(start, planned.afterHours + late);
    late += over ?? 0;
    return {
      ...{ id: seedId("CutoverStep", `${cutoverId(spec)}/${i}`), cutoverId: cutoverId(spec), title },
      ...{ ...planned, ...step, phone: PHONES[step.who] ?? "", startedAt },
      endedAt: startedAt === null ? null : hoursAfter(startedAt, planned.hours + (over ?? 0)),
    };
  });
}
