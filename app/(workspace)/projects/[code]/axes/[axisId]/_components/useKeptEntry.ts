"use client";

import { useRouter } from "next/navigation";
import { useCallback, useRef, useState } from "react";
import type {
  EntryDraft,
  EntryPlace,
} from "@/app/(workspace)/projects/[code]/axes/[axisId]/_components/entryDraft";
import { useEntryDraft } from "@/app/(workspace)/projects/[code]/axes/[axisId]/_components/useEntryDraft";
import { useRetry } from "@/app/(workspace)/projects/[code]/axes/[axisId]/_components/useRetry";
import { setThisAxisEntry } from "@/app/(workspace)/projects/[code]/axes/actions";
import type { Refusal } from "@/lib/access/action";

/**
 * One check as typed, sent when its form is left and sent again until the server has it.
 *
 * Nothing typed is lost with the connection or the page.
 */
export function useKeptEntry(place: EntryPlace, stored: EntryDraft) {
  const router = useRouter();
  const [refusal, setRefusal] = useState<Refusal | null>(null);
  const { draft, entry, kept, setKept, keep, clear, type } = useEntryDraft(place, stored);
  const sending = useRef(false);

  const send = useCallback(async () => {
    if (sending.current) return;
    const sent = draft.current;
    sending.current = true;
    setKept("sending");
    // Without a connection the call throws; what was typed stays on the device and is tried again.
    const made = await setThisAxisEntry({ ...place, ...sent }).catch(() => null);
    sending.current = false;
    if (made === null) {
      setKept("waiting");
      return;
    }
    setRefusal(made.ok ? null : made.error);
    if (!made.ok) setKept("refused");
    else if (draft.current === sent) clear({ ...sent, version: made.value.version });
    else keep({ ...draft.current, version: made.value.version });
    router.refresh();
  }, [place, draft, setKept, keep, clear, router]);
  useRetry(kept === "waiting", send);

  /** When the form is left. */
  const leave = () => {
    if (kept === "typed" || kept === "refused") void send();
  };
  /** After a conflict: writes what was typed over what the other person wrote, or takes theirs. */
  const settle = (mine: boolean) => {
    setRefusal(null);
    if (!mine) clear(stored);
    else {
      keep({ ...draft.current, version: stored.version });
      void send();
    }
  };
  return { entry, kept, refusal, type, leave, settle };
}
