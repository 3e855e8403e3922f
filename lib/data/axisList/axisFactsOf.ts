import "server-only";
import type { AxisFacts } from "@/lib/schema/axisFacts";
import type { Axis } from "@/prisma/generated/client";

const dayOf = (date: Date | null) => date?.toISOString().slice(0, 10) ?? null;

/** The facts of a stored axis as plain values. */
export function axisFactsOf(axis: Axis): AxisFacts {
  return {
    powerCable: axis.powerCable,
    powerCableLength: axis.powerCableLength?.toNumber() ?? null,
    powerCableInChain: axis.powerCableInChain,
    powerCableEvidence: axis.powerCableEvidence,
    powerCableReadOn: dayOf(axis.powerCableReadOn),
    feedbackCable: axis.feedbackCable,
    feedbackCableLength: axis.feedbackCableLength?.toNumber() ?? null,
    feedbackCableInChain: axis.feedbackCableInChain,
    feedbackCableEvidence: axis.feedbackCableEvidence,
    feedbackCableReadOn: dayOf(axis.feedbackCableReadOn),
    travelUnit: axis.travelUnit,
    travel: axis.travel?.toNumber() ?? null,
    hardLow: axis.hardLow?.toNumber() ?? null,
    hardHigh: axis.hardHigh?.toNumber() ?? null,
    softLow: axis.softLow?.toNumber() ?? null,
    softHigh: axis.softHigh?.toNumber() ?? null,
    travelEvidence: axis.travelEvidence,
    travelReadOn: dayOf(axis.travelReadOn),
    homing: axis.homing,
    homeOffset: axis.homeOffset?.toNumber() ?? null,
    homingEvidence: axis.homingEvidence,
    homingReadOn: dayOf(axis.homingReadOn),
  };
}
