/** A controller as a line sees it. */
export interface ControllerFacts {
  readonly designation: string;
  readonly model: string;
  /** Major firmware level; null is not known. */
  readonly firmware: number | null;
  /** Memory used, percent; null is not known. */
  readonly memoryPercent: number | null;
  /** Axes it drives on this line. */
  readonly axes: number;
}

/** Memory this full leaves little room for a firmware step or another drive (common practice, no source). */
export const MEMORY_CAUTION_PERCENT = 85;

/** The controllers of the model that drives most axes of a line, summed up. */
export interface LeadController {
  readonly model: string;
  readonly controllers: number;
  /** Lowest and highest known level; null when none of them is known. */
  readonly firmware: { readonly low: number; readonly high: number } | null;
  readonly unknownFirmware: number;
}

/** Finds the controller model that drives most axes; equal models go by name. Null without a controller. */
export function leadController(controllers: readonly ControllerFacts[]): LeadController | null {
  const axes = new Map<string, number>();
  for (const one of controllers) axes.set(one.model, (axes.get(one.model) ?? 0) + one.axes);
  const [lead] = [...axes].sort(([a, m], [b, n]) => n - m || (a < b ? -1 : 1));
  if (!lead) return null;
  const own = controllers.filter((one) => one.model === lead[0]);
  const levels = own.map((one) => one.firmware).filter((level) => level !== null);
  return {
    model: lead[0],
    controllers: own.length,
    firmware: levels.length === 0 ? null : { low: Math.min(...levels), high: Math.max(...levels) },
    unknownFirmware: own.length - levels.length,
  };
}

/** How a controller stands against the floor: an unread level is a state of its own, never "fine". */
export type FloorState = "below" | "meets" | "unknown" | "no-floor";

/** Compares a firmware level with the lowest level new drives need. */
export function floorState(firmware: number | null, floor: number | null): FloorState {
  if (floor === null) return "no-floor";
  if (firmware === null) return "unknown";
  return firmware < floor ? "below" : "meets";
}

/** What stands in the way of new drives on a line's controllers, counted. */
export interface ControllerBlockers {
  readonly belowFloor: readonly string[];
  readonly unknownFirmware: readonly string[];
  readonly memoryTight: readonly string[];
  readonly unknownMemory: readonly string[];
}

/** Names the controllers below the floor, unread, or short of memory. */
export function controllerBlockers(
  controllers: readonly ControllerFacts[],
  floor: number | null,
): ControllerBlockers {
  const named = (holds: (one: ControllerFacts) => boolean) =>
    controllers.filter(holds).map((one) => one.designation);
  return {
    belowFloor: named((one) => floorState(one.firmware, floor) === "below"),
    unknownFirmware: named((one) => one.firmware === null),
    memoryTight: named((one) => one.memoryPercent !== null && one.memoryPercent >= MEMORY_CAUTION_PERCENT),
    unknownMemory: named((one) => one.memoryPercent === null),
  };
}

/** The line's standing against the floor in a word: the worst of its controllers, unread before fine. */
export function lineFloorWord(controllers: readonly ControllerFacts[], floor: number | null): string {
  if (controllers.length === 0) return "no controller recorded";
  if (floor === null) return "no floor recorded";
  const states = controllers.map((one) => floorState(one.firmware, floor));
  if (states.includes("below")) return "below the floor";
  return states.includes("unknown") ? "not all read" : "at the floor or above";
}

/** The known levels of a model in a few characters: `24`, `21–22`. */
export function firmwareWords({ firmware }: LeadController): string {
  if (firmware === null) return "not read";
  const { low, high } = firmware;
  return low === high ? String(low) : `${low}–${high}`;
}
