"use client";

import { Dialog } from "@/app/_ui/Dialog";
import { UndoBar } from "@/app/_ui/UndoBar";
import { useDone } from "@/app/(workspace)/_components/useDone";
import { ControllerForm } from "@/app/(workspace)/machines/[id]/_components/ControllerForm";
import { savePlate } from "@/app/(workspace)/machines/[id]/actions";
import type { MachineController } from "@/lib/view/machine";

/** The button that changes what was read off a controller, its form, and the way back. */
export function ChangeController({ controller }: { readonly controller: MachineController }) {
  const { done, tell, undo, close } = useDone();
  const { id: controllerId, designation, hardware, axisLimit, leadsLine, readOn, evidence } = controller;
  const seen = { hardware, axisLimit, leadsLineId: leadsLine?.id ?? null, readOn, evidence };
  return (
    <>
      <Dialog trigger="Change hardware, axes and line" title={`Read off ${designation}`}>
        {(closeDialog) => (
          <ControllerForm
            controller={controller}
            seen={seen}
            onSaved={(wanted) => {
              closeDialog();
              tell({
                message: `${designation} is written down.`,
                undo: () => savePlate({ controllerId, seen: wanted, wanted: seen }),
              });
            }}
          />
        )}
      </Dialog>
      <UndoBar message={done?.message ?? null} {...(done?.undo ? { onUndo: undo } : {})} onClose={close} />
    </>
  );
}
