"use client";

import { useMemo } from "react";
import { DataTable } from "@/app/_ui/DataTable/DataTable";
import { Dialog } from "@/app/_ui/Dialog";
import { UndoBar } from "@/app/_ui/UndoBar";
import { useDone } from "@/app/(workspace)/_components/useDone";
import { ObligationForm } from "@/app/(workspace)/dates/_components/ObligationForm";
import { obligationColumns } from "@/app/(workspace)/dates/_components/obligationColumns";
import { addDuty, removeDuty } from "@/app/(workspace)/dates/actions";
import type { IsoDate } from "@/lib/kernel/isoDate";
import type { Obligation, ObligationPlace } from "@/lib/view/obligation";

interface ObligationTableProps {
  readonly obligations: readonly Obligation[];
  /** Where the person may write dates; empty is nowhere. */
  readonly places: readonly ObligationPlace[];
  readonly asOf: IsoDate;
  /** Last day something can be marked done on. */
  readonly today: IsoDate;
}

/** The safety and legal dates on record, open and done, and what can be changed about them. */
export function ObligationTable({ obligations, places, asOf, today }: ObligationTableProps) {
  const { done, tell, undo, close } = useDone();
  const columns = useMemo(
    () => obligationColumns({ places, asOf, today, tell }),
    [places, asOf, today, tell],
  );
  return (
    <>
      <DataTable
        id="duties"
        caption="Safety and legal dates on record"
        noun="duties"
        rows={obligations}
        columns={columns}
        rowKey={({ id }) => id}
        bare
        empty={
          <p className="measure">No safety or legal date is on record. That does not mean there is none.</p>
        }
      />
      {places.length === 0 ? null : (
        <div className="no-print mt-3">
          <Dialog trigger="Add a date" title="Add a safety or legal date" wide>
            {(closeDialog) => (
              <ObligationForm
                places={places}
                save={addDuty}
                onSaved={({ obligationId, version }, title) => {
                  closeDialog();
                  tell({ message: `Added: ${title}.`, undo: () => removeDuty({ obligationId, version }) });
                }}
              />
            )}
          </Dialog>
        </div>
      )}
      <UndoBar message={done?.message ?? null} {...(done?.undo ? { onUndo: undo } : {})} onClose={close} />
    </>
  );
}
