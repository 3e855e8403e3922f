"use client";

import { useRouter } from "next/navigation";
import { useTransition } from "react";
import { Button, type ButtonKind } from "@/app/_ui/Button";
import type { Refusal } from "@/lib/access/action";
import type { Result } from "@/lib/kernel/result";

interface PressOnceProps<T> {
  readonly text: string;
  /** Said to who does not see which row it stands in. */
  readonly label?: string;
  readonly kind?: ButtonKind;
  readonly run: () => Promise<Result<T, Refusal>>;
  /** Told why it was refused; null when it was not. */
  readonly onAnswer: (problem: string | null) => void;
  readonly onDone?: (value: T) => void;
}

/** A button that does one thing, not twice while it is being done, and then reads the page again. */
export function PressOnce<T>({ text, label, kind = "plain", run, onAnswer, onDone }: PressOnceProps<T>) {
  const router = useRouter();
  const [pending, start] = useTransition();
  const press = () => {
    if (pending) return;
    start(async () => {
      const answer = await run();
      onAnswer(answer.ok ? null : answer.error.reason);
      if (answer.ok) onDone?.(answer.value);
      router.refresh();
    });
  };
  return (
    <Button kind={kind} aria-label={label} aria-disabled={pending} onClick={press}>
      {text}
    </Button>
  );
}
