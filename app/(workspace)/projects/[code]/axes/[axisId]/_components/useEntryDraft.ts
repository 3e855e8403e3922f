"use client";

import { useCallback, useEffect, useRef, useState } from "react";
import {
  dropDraft,
  type EntryDraft,
  type EntryPlace,
  keepDraft,
  readDraft,
} from "@/app/(workspace)/projects/[code]/axes/[axisId]/_components/entryDraft";
import type { TypedEntry } from "@/lib/schema/axisRecord";

/** Where what was typed is: anything but saved is on this device only. */
export type Kept = "saved" | "typed" | "sending" | "waiting" | "refused";

/** One check as typed, kept on the device with every key; the place must keep its identity between renders. */
export function useEntryDraft(place: EntryPlace, stored: EntryDraft) {
  const [entry, setEntry] = useState(stored.entry);
  const [kept, setKept] = useState<Kept>("saved");
  const draft = useRef(stored);

  const hold = useCallback((next: EntryDraft, state: Kept) => {
    draft.current = next;
    setEntry(next.entry);
    setKept(state);
  }, []);

  /** Keeps the draft on the device. */
  const keep = useCallback(
    (next: EntryDraft) => {
      keepDraft(place, next);
      hold(next, "typed");
    },
    [place, hold],
  );

  /** The server has this; nothing is left on the device. */
  const clear = useCallback(
    (next: EntryDraft) => {
      dropDraft(place);
      hold(next, "saved");
    },
    [place, hold],
  );

  useEffect(() => {
    const left = readDraft(place);
    if (left) hold(left, "typed");
  }, [place, hold]);

  const type = (change: Partial<TypedEntry>) =>
    keep({ ...draft.current, entry: { ...draft.current.entry, ...change } });
  return { draft, entry, kept, setKept, keep, clear, type };
}
