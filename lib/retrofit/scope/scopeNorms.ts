import type { CostNorms, Norm } from "@/lib/retrofit/costNorm";
import { sum } from "@/lib/retrofit/scope/spread";

/** Norms with a low, a typical and a high value. */
export interface SpanNorms {
  /** EUR an hour. */
  readonly hourlyRate: Norm;
  /** Person-hours. */
  readonly surveyPerAxis: Norm;
  readonly surveyPerMachine: Norm;
  readonly engineeringPerAxis: Norm;
  readonly engineeringPerMachine: Norm;
  readonly conversionPerController: Norm;
  readonly raisePerController: Norm;
  readonly panelPerAxis: Norm;
  readonly installPerAxis: Norm;
  readonly commissioningPerAxis: Norm;
  readonly validationPerMachine: Norm;
  readonly backupPerController: Norm;
  readonly carePerAxis: Norm;
  /** EUR a piece, where no price is recorded. */
  readonly drive: Norm;
  readonly motor: Norm;
  readonly adapter: Norm;
  readonly cablesPerAxis: Norm;
  readonly controller: Norm;
  readonly ioRack: Norm;
  readonly hmi: Norm;
  /** Share on top of the sum. */
  readonly contingency: Norm;
  /** Share of removed units that passes its test. */
  readonly releasedUsable: Norm;
}

/** Norms with one value. */
export interface PlainNorms {
  /** Crews that work at the same time, and persons in each. */
  readonly crews: number;
  readonly personsPerCrew: number;
  /** Hours of one working day in a window. */
  readonly hoursPerDay: number;
  /** Share of a window that may be planned. */
  readonly windowShare: number;
  /** Quote, approval and order, weeks. */
  readonly purchaseWeeks: number;
  readonly transportWeeks: number;
  /** Receiving, testing and setting up, weeks. */
  readonly incomingWeeks: number;
}

export interface ScopeNorms {
  readonly spans: SpanNorms;
  readonly plain: PlainNorms;
}

/** Common practice, no source, but for what `raise`, `backup`, `care`, `adapter` and `ioRack` take: own guesses. */
export const likelyScopeNorms: ScopeNorms = {
  spans: {
    hourlyRate: [75, 90, 110],
    surveyPerAxis: [0.3, 0.5, 1],
    surveyPerMachine: [2, 4, 8],
    engineeringPerAxis: [3, 6, 14],
    engineeringPerMachine: [24, 60, 160],
    conversionPerController: [60, 160, 500],
    raisePerController: [8, 16, 40],
    panelPerAxis: [2, 4, 8],
    installPerAxis: [1.5, 3, 6],
    commissioningPerAxis: [1, 2.5, 6],
    validationPerMachine: [8, 24, 80],
    backupPerController: [2, 4, 8],
    carePerAxis: [0.2, 0.5, 1],
    drive: [1200, 2200, 4500],
    motor: [800, 1600, 4000],
    adapter: [150, 350, 900],
    cablesPerAxis: [200, 450, 1200],
    controller: [4000, 12_000, 35_000],
    ioRack: [400, 900, 2000],
    hmi: [1500, 4000, 10_000],
    contingency: [0.08, 0.15, 0.3],
    releasedUsable: [0.5, 0.65, 0.8],
  },
  plain: {
    crews: 2,
    personsPerCrew: 2,
    hoursPerDay: 10,
    windowShare: 0.8,
    purchaseWeeks: 8,
    transportWeeks: 1,
    incomingWeeks: 1.5,
  },
};

/** The norms as `retrofitCost` takes them: hours summed by axis and by machine. */
export function costNormsOf({ spans }: ScopeNorms): CostNorms {
  const { hourlyRate, drive, motor, cablesPerAxis, controller, hmi, contingency } = spans;
  return {
    ...{ hourlyRate, drive, motor, cablesPerAxis, controller, hmi, contingency },
    hoursPerAxis: sum([
      spans.surveyPerAxis,
      spans.engineeringPerAxis,
      spans.panelPerAxis,
      spans.installPerAxis,
      spans.commissioningPerAxis,
    ]),
    hoursPerMachine: sum([spans.surveyPerMachine, spans.engineeringPerMachine, spans.validationPerMachine]),
    hoursPerController: spans.conversionPerController,
  };
}

/** Persons at work at the same time. */
export function personsAtWork({ plain }: ScopeNorms): number {
  return plain.crews * plain.personsPerCrew;
}
