import type { IsoDate } from "@/lib/kernel/isoDate";
import type { LineEvent } from "@/lib/view/lineDossier";
import { significant } from "@/lib/view/number";

/** An event with the places it belongs to. */
export interface ListedEvent extends LineEvent {
  readonly siteCode: string;
  readonly lineCode: string | null;
}

/** Two records that may be, or were said to be, of one event. */
export interface EventPair {
  readonly first: ListedEvent;
  readonly second: ListedEvent;
  /** Hours between them. */
  readonly hoursApart: number;
}

/** What a person said of a pair. */
export interface SettledPair extends EventPair {
  readonly matchId: string;
  readonly keptId: string;
  readonly verdict: "same" | "different";
  readonly reason: string;
  readonly decidedBy: string;
  readonly decidedOn: IsoDate;
  /** What the record that counts took over from the other. */
  readonly filled: readonly string[];
  readonly mayPart: boolean;
}

/** Fields a record that counts takes over from the other where its own are empty. */
export const FILLED_FIELDS = {
  positionId: "place",
  machineId: "machine",
  partId: "part",
  downtimeHours: "stop",
  logisticHours: "waiting",
  spareAtHand: "spare at hand",
} as const;
export type FilledField = keyof typeof FILLED_FIELDS;

/** Why two records may be one event, as short words. */
export function pairReasons({ first, second, hoursApart }: EventPair): string[] {
  const same = <T>(a: T | null, b: T | null) => a !== null && a === b;
  const lacks = [first, second].filter(({ part }) => part === null).length;
  return [
    same(first.machine, second.machine)
      ? `same machine ${first.machine ?? ""}`
      : `same line ${first.lineCode ?? ""}`,
    hoursApart === 0 ? "the same minute" : `${significant(hoursApart, 2)} h apart`,
    same(first.part?.number ?? null, second.part?.number ?? null) ? "same part" : "",
    lacks === 1 ? "one names no part" : lacks === 2 ? "neither names a part" : "",
    same(first.downtimeHours, second.downtimeHours) ? "same length of stop" : "",
  ].filter((words) => words !== "");
}

/** The record that says more is proposed as the one that counts; of equals the first. */
export function fullerOf({ first, second }: EventPair): ListedEvent {
  const said = ({ part, place, machine, downtimeHours, logisticHours, spareAtHand, text }: ListedEvent) =>
    [part, place, machine, downtimeHours, logisticHours, spareAtHand, text].filter((one) => one !== null)
      .length;
  return said(second) > said(first) ? second : first;
}
