"use client";

import type { ReactNode } from "react";
import { useFormStatus } from "react-dom";
import { Button, type ButtonKind } from "@/app/_ui/Button";

interface SubmitButtonProps {
  readonly kind?: ButtonKind;
  /** From `useTransition`, where the form calls its action itself. */
  readonly pending?: boolean;
  /** Said while the change runs, e.g. `Saving…`. */
  readonly pendingText?: string;
  readonly children: ReactNode;
}

/** Sends the form; while the change runs it says so and ignores a second press. */
export function SubmitButton({
  kind = "primary",
  pending,
  pendingText = "Saving…",
  children,
}: SubmitButtonProps) {
  const status = useFormStatus();
  const busy = pending ?? status.pending;
  return (
    <Button
      type="submit"
      kind={kind}
      aria-disabled={busy}
      onClick={(event) => {
        if (busy) event.preventDefault();
      }}
    >
      {busy ? pendingText : children}
    </Button>
  );
}
