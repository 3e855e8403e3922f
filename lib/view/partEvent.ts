import type { IsoDate } from "@/lib/kernel/isoDate";
import type { LineEvent } from "@/lib/view/lineDossier";
import type { Kind } from "@/lib/view/partExperience";

/** One recorded event of a part. */
export interface PartEvent extends Omit<LineEvent, "part" | "itemClass"> {
  readonly siteCode: string;
  readonly lineCode: string | null;
  readonly day: IsoDate;
}

const KINDS = {
  failure: "failure",
  no_fault_found: "no fault found",
  removal: "removal, cause not recorded",
} as const satisfies Record<LineEvent["kind"], string>;

/** What kind of event was recorded, in words. */
export const eventKindName = (kind: LineEvent["kind"]): string => KINDS[kind];

/** As what an event counts in the rates. */
export type CountedAs = "failure" | "no fault found" | "with its cause" | "set aside";

export type CountedEvent = PartEvent & { readonly countsAs: CountedAs };

const moment = ({ day, time }: PartEvent) => `${day} ${time}`;

/**
 * Marks each event with what it counts as: a failure (and a removal), a removal alone, or nothing for itself.
 *
 * Of the events of one cause at one site the first failure counts, or the first event when none is a failure.
 */
export function countEvents(events: readonly PartEvent[]): CountedEvent[] {
  const firsts = new Map<string, PartEvent>();
  for (const event of events) {
    const key = causeOf(event);
    if (key === null) continue;
    const first = firsts.get(key);
    if (!first || goesBefore(event, first)) firsts.set(key, event);
  }
  return events.map((event) => {
    const key = causeOf(event);
    const alone = key === null || firsts.get(key) === event;
    return { ...event, countsAs: countsAs(event, alone) };
  });
}

function causeOf({ siteCode, commonCause, setAside }: PartEvent): string | null {
  return commonCause === null || setAside !== null ? null : JSON.stringify([siteCode, commonCause]);
}

const isFailure = ({ kind }: PartEvent) => kind !== "no_fault_found";

function goesBefore(a: PartEvent, b: PartEvent): boolean {
  if (isFailure(a) !== isFailure(b)) return isFailure(a);
  return moment(a) < moment(b);
}

function countsAs(event: PartEvent, alone: boolean): CountedAs {
  if (event.setAside !== null) return "set aside";
  if (!alone) return "with its cause";
  return isFailure(event) ? "failure" : "no fault found";
}

const WORDS: Readonly<Record<CountedAs, string>> = {
  failure: "counts",
  "no fault found": "counts, no fault found",
  "with its cause": "counted once with its cause",
  "set aside": "set aside",
};

/** Why an event counts or not, in words. */
export function countedWords({ countsAs, commonCause, setAside }: CountedEvent): string {
  if (setAside !== null) return `set aside: ${setAside}`;
  return commonCause === null ? WORDS[countsAs] : `${WORDS[countsAs]} (${commonCause})`;
}

/** Whether an event counts in a rate; a failure is a removal too. */
export function countsIn({ countsAs }: CountedEvent, kind: Kind): boolean {
  return countsAs === "failure" || (countsAs === "no fault found" && kind === "removals");
}

/** Address of the rows behind a count of a part, on the part's own page. */
export function eventRowsHref(partId: string, kind: Kind): string {
  return `/parts/${partId}?events.is.${kind}=yes#events`;
}
