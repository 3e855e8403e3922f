"use client";

import { useRouter } from "next/navigation";
import { useCallback, useRef, useState } from "react";
import type { Draft } from "@/app/_ui/draft/keptDraft";
import { useDraft } from "@/app/_ui/draft/useDraft";
import { useRetry } from "@/app/_ui/draft/useRetry";
import type { Refusal } from "@/lib/access/action";
import type { Result } from "@/lib/kernel/result";

interface KeptDraft<T> {
  /** What it is called on this device; one thing, one name. */
  readonly name: string;
  readonly stored: Draft<T>;
  /** Writes it over the version it was typed over; must keep its identity between renders. */
  readonly write: (draft: Draft<T>) => Promise<Result<{ readonly version: number }, Refusal>>;
}

/**
 * Something as typed, sent when its form is left and sent again until the server has it.
 *
 * Nothing typed is lost with the connection or the page.
 */
export function useKeptDraft<T>({ name, stored, write }: KeptDraft<T>) {
  const router = useRouter();
  const [refusal, setRefusal] = useState<Refusal | null>(null);
  const { draft, entry, kept, setKept, keep, clear, type } = useDraft(name, stored);
  const sending = useRef(false);

  const send = useCallback(async () => {
    if (sending.current) return;
    const sent = draft.current;
    sending.current = true;
    setKept("sending");
    // Without a connection the call throws; what was typed stays on the device and is tried again.
    const made = await write(sent).catch(() => null);
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
  }, [write, draft, setKept, keep, clear, router]);
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
