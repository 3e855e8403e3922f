"use client";

import { useRouter } from "next/navigation";
import { useState } from "react";
import { Dialog } from "@/app/_ui/Dialog";
import { UndoBar } from "@/app/_ui/UndoBar";
import { FiguresForm } from "@/app/(workspace)/lines/[code]/_components/FiguresForm";
import { saveLineFigures } from "@/app/(workspace)/lines/[code]/actions";
import type { LineDossier, StoredFigures } from "@/lib/view/lineDossier";

type EditFiguresProps = Pick<LineDossier, "id" | "code" | "stored"> & { readonly currency: string };

interface Change {
  readonly before: StoredFigures;
  readonly after: StoredFigures;
}

/** Changes what is known of a line's cost, buffer and shifts, and offers to take it back. */
export function EditFigures({ id, code, stored, currency }: EditFiguresProps) {
  const router = useRouter();
  const [done, setDone] = useState<Change | null>(null);
  const [refused, setRefused] = useState<string | null>(null);

  const undo = async () => {
    if (done === null) return;
    const answer = await saveLineFigures({ lineId: id, seen: done.after, wanted: done.before });
    setRefused(answer.ok ? null : answer.error.reason);
    router.refresh();
  };
  const close = () => {
    setDone(null);
    setRefused(null);
  };

  return (
    <>
      <Dialog trigger="Edit figures" title={`Cost, buffer and shifts of ${code}`} wide>
        {(closeDialog) => (
          <FiguresForm
            stored={stored}
            currency={currency}
            save={(wanted, why) => saveLineFigures({ lineId: id, seen: stored, wanted, why })}
            onSaved={(after) => {
              setDone({ before: stored, after });
              closeDialog();
              router.refresh();
            }}
          />
        )}
      </Dialog>
      {refused === null ? (
        <UndoBar
          message={done === null ? null : `Figures of ${code} changed; loss and ranks follow.`}
          onUndo={undo}
          onClose={() => setDone(null)}
        />
      ) : (
        <UndoBar message={refused} onClose={close} />
      )}
    </>
  );
}
