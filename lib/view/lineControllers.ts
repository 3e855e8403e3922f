import type { Step } from "@/lib/retrofit/compatibility/step";

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
  /** What the floor rules in force ask of it before it runs new drives. */
  readonly step: Step["kind"];
}

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

/** How many controllers do not run the new drives as they are: to be raised or swapped. */
export function belowFloor(controllers: readonly ControllerFacts[]): number {
  return controllers.filter(({ step }) => step === "raise" || step === "swap").length;
}

const FLOOR_WORDS = [
  ["swap", "a controller to swap"],
  ["raise", "below the floor"],
  ["unknown", "not all read"],
  ["no-rule", "no floor rule"],
] as const;

/** The line's standing against the floor in a word: the worst of its controllers, unread before fine. */
export function lineFloorWord(controllers: readonly ControllerFacts[]): string {
  if (controllers.length === 0) return "no controller recorded";
  const worst = FLOOR_WORDS.find(([step]) => controllers.some((one) => one.step === step));
  return worst?.[1] ?? "at the floor or above";
}

/** The known levels of a model in a few characters: `24`, `21–22`. */
export function firmwareWords({ firmware }: LeadController): string {
  if (firmware === null) return "not read";
  const { low, high } = firmware;
  return low === high ? String(low) : `${low}–${high}`;
}

/** The controllers of a line as far as a row of the ranking tells of them. */
export interface ControllersInShort {
  readonly lead: LeadController | null;
  readonly all: number;
  readonly below: number;
  /** How many nobody has read the firmware of. */
  readonly unread: number;
  readonly floor: string;
}

export function controllersInShort(controllers: readonly ControllerFacts[]): ControllersInShort {
  return {
    ...{ lead: leadController(controllers), all: controllers.length, below: belowFloor(controllers) },
    unread: controllers.filter((one) => one.firmware === null).length,
    floor: lineFloorWord(controllers),
  };
}
