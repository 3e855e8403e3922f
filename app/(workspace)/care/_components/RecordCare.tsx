"use client";

import { Dialog } from "@/app/_ui/Dialog";
import { orOffline } from "@/app/_ui/draft/orOffline";
import { EntryForm } from "@/app/_ui/EntryForm";
import { CheckboxField } from "@/app/_ui/field/CheckboxField";
import { DateField } from "@/app/_ui/field/DateField";
import { NumberField } from "@/app/_ui/field/NumberField";
import { TextField } from "@/app/_ui/field/TextField";
import type { Done } from "@/app/(workspace)/_components/useDone";
import { recordThisCare, takeThisCareBack } from "@/app/(workspace)/care/actions";
import type { CareLot } from "@/lib/view/storageCare";

interface RecordCareProps {
  readonly lot: CareLot;
  readonly today: string;
  /** Who is signed in; another name may be written. */
  readonly by: string;
  readonly tell: (done: Done) => void;
}

/** Records that the pieces of a lot had their care. */
export function RecordCare({ lot, today, by, tell }: RecordCareProps) {
  const { lotId, state, quantity, lastPoweredOn, siteCode, bin, part } = lot;
  const seen = { state, quantity, lastPoweredOn };
  return (
    <Dialog trigger={`Record ${bin}`} title={`Care of ${quantity} × ${part} in ${siteCode} ${bin}`}>
      {(close) => (
        <EntryForm
          submit="Record it"
          save={(text) =>
            orOffline(
              recordThisCare({
                ...{ lotId, seen, doneOn: text("doneOn"), doneBy: text("doneBy") },
                ...{ failed: text("failed"), tested: text("tested") === "on", note: text("note") },
              }),
            )
          }
          onSaved={({ careId }) => {
            close();
            const undo = () => takeThisCareBack({ careId });
            tell({ message: `Care of ${siteCode} ${bin} recorded.`, undo });
          }}
        >
          {(errorOf) => (
            <div className="grid gap-4 sm:grid-cols-2">
              <DateField
                name="doneOn"
                label="Done on"
                required
                defaultValue={today}
                error={errorOf("doneOn")}
              />
              <TextField
                name="doneBy"
                label="Done by"
                hint="A competent person"
                required
                defaultValue={by}
                error={errorOf("doneBy")}
              />
              <NumberField
                name="failed"
                label="Pieces that failed"
                hint="They go on hold."
                min={0}
                step={1}
                defaultValue="0"
                error={errorOf("failed")}
              />
              <TextField name="note" label="What was seen" error={errorOf("note")} />
              <CheckboxField
                name="tested"
                label="The others ran under load"
                hint="Unproven pieces that ran are booked as usable."
              />
            </div>
          )}
        </EntryForm>
      )}
    </Dialog>
  );
}
