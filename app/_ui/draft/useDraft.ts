"use client";

import { useCallback, useEffect, useRef, useState } from "react";
import { type Draft, dropDraft, keepDraft, readDraft } from "@/app/_ui/draft/keptDraft";

/** Where what was typed is: anything but saved is on this device only. */
export type Kept = "saved" | "typed" | "sending" | "waiting" | "refused";

/** Something as typed, kept on the device under its name with every key. */
export function useDraft<T>(name: string, stored: Draft<T>) {
  const [entry, setEntry] = useState(stored.entry);
  const [kept, setKept] = useState<Kept>("saved");
  const draft = useRef(stored);

  const hold = useCallback((next: Draft<T>, state: Kept) => {
    draft.current = next;
    setEntry(next.entry);
    setKept(state);
  }, []);

  /** Keeps the draft on the device. */
  const keep = useCallback(
    (next: Draft<T>) => {
      keepDraft(name, next);
      hold(next, "typed");
    },
    [name, hold],
  );

  /** The server has this; nothing is left on the device. */
  const clear = useCallback(
    (next: Draft<T>) => {
      dropDraft(name);
      hold(next, "saved");
    },
    [name, hold],
  );

  useEffect(() => {
    const left = readDraft<T>(name);
    if (left) hold(left, "typed");
  }, [name, hold]);

  // Where nothing was typed here, what others wrote is shown as soon as the page is read again. The device is asked as
  // well: a draft just taken up from it is not in the state yet.
  useEffect(() => {
    const isNewer = stored.version > draft.current.version;
    if (kept === "saved" && isNewer && readDraft<T>(name) === null) hold(stored, "saved");
  }, [name, stored, kept, hold]);

  const type = (change: Partial<T>) =>
    keep({ ...draft.current, entry: { ...draft.current.entry, ...change } });
  return { draft, entry, kept, setKept, keep, clear, type };
}
