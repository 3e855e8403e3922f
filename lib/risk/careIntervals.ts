import type { ItemClass } from "@/lib/risk/evaluation";

export type CareKind = "power_up" | "battery";

/** What care stored pieces of a class get, and how often; null months need none. */
export interface CareInterval {
  readonly kind: CareKind;
  readonly everyMonths: number | null;
}

const YEARLY: CareInterval = { kind: "power_up", everyMonths: 12 };
const NONE: CareInterval = { kind: "power_up", everyMonths: null };

/**
 * What is used until somebody sets another interval: pieces with capacitors are powered every year, the battery of a
 * stored controller is changed every two. Common practice, no source.
 */
export const usualCare: Readonly<Record<ItemClass, CareInterval>> = {
  drive: YEARLY,
  power_supply: YEARLY,
  hmi: YEARLY,
  controller: { kind: "battery", everyMonths: 24 },
  motor: NONE,
  io: NONE,
  converter: NONE,
  network_card: NONE,
};

/** Unpowered for longer than this, voltage is raised in steps. Common practice, no source. */
export const REFORM_AFTER_MONTHS = 24;
