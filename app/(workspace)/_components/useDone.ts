import { useRouter } from "next/navigation";
import { useCallback, useRef, useState } from "react";
import type { Refusal } from "@/lib/access/action";
import type { Result } from "@/lib/kernel/result";

export interface Done {
  /** What was done, or why it was refused. */
  readonly message: string;
  /** Takes it back. */
  readonly undo?: () => Promise<Result<unknown, Refusal>>;
}

/** What was last done on the page: said, read again, and taken back when asked. */
export function useDone() {
  const router = useRouter();
  const [done, setDone] = useState<Done | null>(null);
  const refused = useRef(false);
  const tell = useCallback(
    (next: Done) => {
      setDone(next);
      router.refresh();
    },
    [router],
  );
  const undo = async () => {
    const answer = await done?.undo?.();
    refused.current = answer !== undefined && !answer.ok;
    if (answer && !answer.ok) setDone({ message: answer.error.reason });
    router.refresh();
  };
  // The bar closes itself after an undo; a refusal has to stay to be read.
  const close = () => {
    if (!refused.current) setDone(null);
    refused.current = false;
  };
  return { done, tell, undo, close };
}
