import type { IsoDate } from "@/lib/kernel/isoDate";
import type { Span } from "@/lib/risk/evaluation";
import { day } from "@/lib/view/time";

/** Somebody answers for leaving a line as it is, until a day. */
export interface Acceptance {
  readonly id: string;
  readonly lineId: string;
  readonly lineCode: string;
  readonly acceptedBy: string;
  readonly acceptedOn: IsoDate;
  readonly until: IsoDate;
  readonly reason: string;
  /** First-year stop loss when it was accepted, EUR; null was not known. */
  readonly loss: Span | null;
  readonly endedOn: IsoDate | null;
  readonly recordedBy: string;
  readonly version: number;
}

/** "held": in force · "review": it ran out and nobody looked at the line again · "ended": it was ended early. */
export type AcceptanceState = "held" | "review" | "ended";

/** How an acceptance stands on a day. */
export function acceptanceState(
  { until, endedOn }: Pick<Acceptance, "until" | "endedOn">,
  asOf: IsoDate,
): AcceptanceState {
  if (endedOn !== null && endedOn <= asOf) return "ended";
  return asOf <= until ? "held" : "review";
}

/** The acceptance of each line that speaks on a day, by line id: the one accepted last; an ended one is silent. */
export function speakingByLine(all: readonly Acceptance[], asOf: IsoDate): Map<string, Acceptance> {
  const last = new Map<string, Acceptance>();
  for (const one of all) {
    if (one.acceptedOn > asOf) continue;
    const known = last.get(one.lineId);
    if (!known || known.acceptedOn < one.acceptedOn) last.set(one.lineId, one);
  }
  return new Map([...last].filter(([, one]) => acceptanceState(one, asOf) !== "ended"));
}

/** An acceptance in one sentence. */
export function acceptanceWords(
  one: Pick<Acceptance, "acceptedBy" | "until" | "endedOn">,
  asOf: IsoDate,
): string {
  switch (acceptanceState(one, asOf)) {
    case "held":
      return `Risk held by ${one.acceptedBy} until ${day(one.until)}`;
    case "review":
      return `Risk held by ${one.acceptedBy} ran out on ${day(one.until)}: to be looked at again`;
    case "ended":
      return `Risk held by ${one.acceptedBy} was ended on ${day(one.endedOn ?? one.until)}`;
  }
}
