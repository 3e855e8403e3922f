"use client";

import { useTransition } from "react";
import { Button } from "@/app/_ui/Button";

interface UndoBarProps {
  /** What was done, e.g. `4 pieces put on hold at VEL.` Null hides the bar; it stays until closed. */
  readonly message: string | null;
  /** Takes it back; without it there is only the message. */
  readonly onUndo?: () => Promise<void>;
  readonly onClose: () => void;
}

/** Says what was just done and offers to take it back. */
export function UndoBar({ message, onUndo, onClose }: UndoBarProps) {
  const [pending, start] = useTransition();
  return (
    <div
      role="status"
      className="no-print pointer-events-none fixed inset-x-0 bottom-4 z-40 flex justify-center px-4 empty:hidden"
    >
      {message === null ? null : (
        <div className="pointer-events-auto flex flex-wrap items-center gap-x-4 gap-y-2 border-2 border-ink bg-sheet px-4 py-2">
          <p>{message}</p>
          {onUndo ? (
            <Button
              aria-disabled={pending}
              onClick={() => {
                if (pending) return;
                start(async () => {
                  await onUndo();
                  onClose();
                });
              }}
            >
              {pending ? "Taking back…" : "Undo"}
            </Button>
          ) : null}
          <Button kind="quiet" onClick={onClose}>
            Close
          </Button>
        </div>
      )}
    </div>
  );
}
