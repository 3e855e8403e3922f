import type { IsoDate } from "@/lib/kernel/isoDate";
import { MOVED_STEPS, type MovedStep } from "@/lib/risk/moved/snapshotInput";
import type { MovedLine, MovedTotal } from "@/lib/risk/whatMoved";
import { NBSP, plainNumber } from "@/lib/view/number";
import { day } from "@/lib/view/time";
import { zonedMoment } from "@/lib/view/zone";

/** Stands in the address for the data as they are, where a snapshot could stand. */
export const NOW = "now";

/** A snapshot in the lists, or the data as they are. */
export interface SnapshotMark {
  readonly id: string;
  readonly asOf: IsoDate;
  /** RFC 3339; null for the data as they are. */
  readonly takenAt: string | null;
  /** Null for the weekly one. */
  readonly takenBy: string | null;
}

/** An input behind a step, in words. */
export interface ToldInput {
  readonly step: MovedStep;
  /** What it is about, e.g. `TM-HR-020 at OST`. */
  readonly subject: string;
  readonly what: string;
  readonly before: string;
  readonly after: string;
  /** Page that holds it; null is none. */
  readonly href: string | null;
}

/** What moved between two snapshots, as somebody may see it. */
export interface MovedLook {
  readonly from: SnapshotMark;
  readonly to: SnapshotMark;
  readonly lines: readonly MovedLine[];
  readonly total: MovedTotal;
  /** Whether the lines are all of the group's. */
  readonly isWholeGroup: boolean;
  readonly inputs: readonly ToldInput[];
  /** Whether what was stored still computes to the result it was stored with. */
  readonly isSound: boolean;
  readonly engine: string;
}

const STEP_WORDS: Readonly<Record<MovedStep, { readonly name: string; readonly about: string }>> = {
  corrections: {
    name: "Data corrections",
    about: "Lines and their figures, installed counts, identity of parts.",
  },
  events: { name: "Events", about: "Removals, failures, unit-years in service and stops on record." },
  stock: { name: "Stock", about: "Pieces by state and their last power-up." },
  dates: { name: "Dates", about: "Supply dates, lead times and repair." },
  assumptions: { name: "Assumptions", about: "The values used where nothing is recorded." },
  clock: { name: "Clock", about: "Days that passed, with everything else already changed." },
};

/** The steps in their order, with their words. */
export const movedSteps = MOVED_STEPS.map((step) => ({ step, ...STEP_WORDS[step] }));

/** A change of loss, whole EUR a year: less is better. */
export function moneyKind(change: number): "better" | "worse" | "same" {
  if (change === 0) return "same";
  return change < 0 ? "better" : "worse";
}

/** A change in whole euros, signed, so that printed steps add up as printed: `+12 345`, `−80`, `0`. */
export function signedEuros(change: number): string {
  return `${change > 0 ? "+" : ""}${plainNumber(change)}`;
}

/** A snapshot in a list of choices: the day it is of, and when and by whom it was taken. */
export function snapshotLabel({ asOf, takenAt, takenBy }: SnapshotMark, zone: string): string {
  if (takenAt === null) return `The data as they are, ${day(asOf)}`;
  return `${day(asOf)} – taken ${zonedMoment(takenAt, zone)}, ${takenBy ?? "weekly"}`;
}

/** The change as a whole and what mattered most, in one sentence. */
export function movedSentence({ total, lines, isWholeGroup, from, to }: MovedLook): string {
  const whose = isWholeGroup ? "The group's" : "Your lines'";
  const span = `from ${day(from.asOf)} to ${day(to.asOf)}`;
  const [most] = [...movedSteps].sort(
    (a, b) => Math.abs(total.steps[b.step]) - Math.abs(total.steps[a.step]),
  );
  if (!most || total.steps[most.step] === 0) return `${whose} stop loss did not move ${span}.`;
  const way =
    total.change === 0
      ? "is the same in sum"
      : `${total.change > 0 ? "rose" : "fell"} by ${euros(Math.abs(total.change))} a year`;
  const [line] = [...lines].sort((a, b) => Math.abs(b.steps[most.step]) - Math.abs(a.steps[most.step]));
  const where = line && line.steps[most.step] !== 0 ? `, most of it on ${line.code}` : "";
  const part = signedMoney(total.steps[most.step]);
  return `${whose} stop loss ${way} ${span}; ${most.name.toLowerCase()} mattered most (${part})${where}.`;
}

function euros(value: number): string {
  return `€${NBSP}${plainNumber(value)}`;
}

/** Keeps a sign and its amount on one line. */
const JOINED = "\u2060";

/** The same with its unit, where no column says it: `+€ 12 345`, `−€ 80`, `€ 0`. */
export function signedMoney(change: number): string {
  const sign = change > 0 ? "+" : "\u2212";
  return `${change === 0 ? "" : `${sign}${JOINED}`}${euros(Math.abs(change))}`;
}
