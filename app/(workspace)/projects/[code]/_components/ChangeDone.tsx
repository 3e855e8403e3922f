"use client";

import { UndoBar } from "@/app/_ui/UndoBar";
import type { useProjectChange } from "@/app/(workspace)/projects/[code]/_components/useProjectChange";

/** What was just changed in the project, with the way back where there is one. */
export function ChangeDone({ change }: { readonly change: ReturnType<typeof useProjectChange> }) {
  const { done, undo, close } = change;
  const message = done?.message ?? null;
  return done?.undo ? (
    <UndoBar message={message} onUndo={undo} onClose={close} />
  ) : (
    <UndoBar message={message} onClose={close} />
  );
}
