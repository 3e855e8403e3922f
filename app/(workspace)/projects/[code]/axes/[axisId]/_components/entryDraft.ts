import type { TypedEntry } from "@/lib/schema/axisRecord";

/** A check as typed, and the version of the stored one it was typed over. */
export interface EntryDraft {
  readonly entry: TypedEntry;
  readonly version: number;
}

export interface EntryPlace {
  readonly projectId: string;
  readonly axisId: string;
  readonly checkId: string;
}

const keyOf = ({ projectId, axisId, checkId }: EntryPlace) =>
  `ebbline axis record ${projectId} ${axisId} ${checkId}`;

/** What is kept on this device and the server does not have; null is nothing. */
export function readDraft(place: EntryPlace): EntryDraft | null {
  const text = localStorage.getItem(keyOf(place));
  return text === null ? null : (JSON.parse(text) as EntryDraft);
}

export function keepDraft(place: EntryPlace, draft: EntryDraft): void {
  localStorage.setItem(keyOf(place), JSON.stringify(draft));
}

export function dropDraft(place: EntryPlace): void {
  localStorage.removeItem(keyOf(place));
}
