"use client";

import { Dialog } from "@/app/_ui/Dialog";
import { orOffline } from "@/app/_ui/draft/orOffline";
import { EntryForm } from "@/app/_ui/EntryForm";
import { CheckboxField } from "@/app/_ui/field/CheckboxField";
import { DateField } from "@/app/_ui/field/DateField";
import { SelectField } from "@/app/_ui/field/SelectField";
import { TextField } from "@/app/_ui/field/TextField";
import type { Done } from "@/app/(workspace)/_components/useDone";
import { dropThisFitted, fitThisUnit } from "@/app/(workspace)/projects/[code]/close/actions";
import type { DrivePlace } from "@/lib/view/closeOut";

interface FittedFormProps {
  readonly projectId: string;
  /** Places without a new unit. */
  readonly places: readonly DrivePlace[];
  readonly today: string;
  readonly tell: (done: Done) => void;
}

/** Records the unit that was put into a place. */
export function FittedForm({ projectId, places, today, tell }: FittedFormProps) {
  const choices = places.map(({ id, name, part }) => ({
    value: id,
    label: part === null ? name : `${name}, ${part}`,
  }));
  return (
    <Dialog trigger="Record a new unit" title="A new unit" wide>
      {(close) => (
        <EntryForm
          submit="Keep it"
          save={(text) =>
            orOffline(
              fitThisUnit({
                ...{ projectId, version: 0, positionId: text("positionId"), plate: text("plate") },
                ...{ serial: text("serial"), revision: text("revision"), firmware: text("firmware") },
                ...{ added: text("added") === "on", fittedOn: text("fittedOn") },
              }),
            )
          }
          onSaved={(mark) => {
            close();
            tell({ message: "The new unit is written down.", undo: () => dropThisFitted(mark) });
          }}
        >
          {(errorOf) => (
            <div className="grid gap-4 sm:grid-cols-2">
              <SelectField
                name="positionId"
                label="Place"
                required
                empty="Choose the place"
                choices={choices}
                error={errorOf("positionId")}
              />
              <TextField name="plate" label="Number on its plate" required error={errorOf("plate")} />
              <TextField name="serial" label="Serial number" required error={errorOf("serial")} />
              <TextField name="revision" label="Revision on its plate" error={errorOf("revision")} />
              <TextField name="firmware" label="Firmware as read" required error={errorOf("firmware")} />
              <DateField
                name="fittedOn"
                label="Put in on"
                required
                defaultValue={today}
                error={errorOf("fittedOn")}
              />
              <CheckboxField name="added" label="The place is new: nothing came out of it" />
            </div>
          )}
        </EntryForm>
      )}
    </Dialog>
  );
}
