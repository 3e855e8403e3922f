import type { IsoDate } from "@/lib/kernel/isoDate";
import type { Evidence } from "@/lib/risk/evaluation";
import type { HomingMethod } from "@/lib/schema/axisFacts";

export interface PanelRow {
  readonly id: string;
  readonly machineId: string;
  readonly designation: string;
  readonly name: string | null;
  readonly location: string | null;
}

/** What is known of an axis beside its drive, motor and scaling. */
export interface AxisFactsRow {
  readonly powerCable: string | null;
  readonly powerCableLength: number | null;
  readonly powerCableInChain: boolean | null;
  readonly powerCableEvidence: Evidence | null;
  readonly powerCableReadOn: IsoDate | null;
  readonly feedbackCable: string | null;
  readonly feedbackCableLength: number | null;
  readonly feedbackCableInChain: boolean | null;
  readonly feedbackCableEvidence: Evidence | null;
  readonly feedbackCableReadOn: IsoDate | null;
  readonly travel: number | null;
  readonly hardLow: number | null;
  readonly hardHigh: number | null;
  readonly softLow: number | null;
  readonly softHigh: number | null;
  readonly travelEvidence: Evidence | null;
  readonly travelReadOn: IsoDate | null;
  readonly homing: HomingMethod | null;
  readonly homeOffset: number | null;
  readonly homingEvidence: Evidence | null;
  readonly homingReadOn: IsoDate | null;
}

/** An axis nobody surveyed. */
export const UNSURVEYED: AxisFactsRow = {
  ...{ powerCable: null, powerCableLength: null, powerCableInChain: null },
  ...{ powerCableEvidence: null, powerCableReadOn: null },
  ...{ feedbackCable: null, feedbackCableLength: null, feedbackCableInChain: null },
  ...{ feedbackCableEvidence: null, feedbackCableReadOn: null },
  ...{ travel: null, hardLow: null, hardHigh: null, softLow: null, softHigh: null },
  ...{ travelEvidence: null, travelReadOn: null },
  ...{ homing: null, homeOffset: null, homingEvidence: null, homingReadOn: null },
};
