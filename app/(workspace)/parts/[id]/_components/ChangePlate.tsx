"use client";

import { Dialog } from "@/app/_ui/Dialog";
import { EntryForm } from "@/app/_ui/EntryForm";
import { NumberField } from "@/app/_ui/field/NumberField";
import { SelectField } from "@/app/_ui/field/SelectField";
import { UndoBar } from "@/app/_ui/UndoBar";
import { useDone } from "@/app/(workspace)/_components/useDone";
import { savePartPlate } from "@/app/(workspace)/parts/[id]/actions";
import type { PartPlate } from "@/lib/schema/plate";
import type { PartDossier } from "@/lib/view/partDossier";
import { profileFamilyChoices } from "@/lib/view/profileFamily";

/** The button that changes what stands on the plate of a part, its form, and the way back. */
export function ChangePlate({ part }: { readonly part: PartDossier }) {
  const { done, tell, undo, close } = useDone();
  const { id: partId, number, powerKw, profileFamily } = part;
  const seen: PartPlate = { powerKw, profileFamily };
  return (
    <>
      <Dialog trigger="Change power and profile family" title={`On the plate of ${number}`}>
        {(closeDialog) => (
          <EntryForm
            submit="Save the plate"
            save={async (text) => {
              const number = (name: string) => (text(name) === "" ? null : Number(text(name)));
              const wanted = { powerKw: number("powerKw"), profileFamily: number("profileFamily") };
              const answer = await savePartPlate({ partId, seen, wanted });
              return answer.ok ? { ok: true, value: wanted } : answer;
            }}
            onSaved={(wanted: PartPlate) => {
              closeDialog();
              tell({
                message: `The plate of ${number} is written down.`,
                undo: () => savePartPlate({ partId, seen: wanted, wanted: seen }),
              });
            }}
          >
            {(errorOf) => (
              <>
                <NumberField
                  {...{ name: "powerKw", label: "Rated power", unit: "kW", min: 0 }}
                  hint="Of a motor or drive, as on its plate. Empty is not known."
                  defaultValue={powerKw ?? ""}
                  error={errorOf("powerKw")}
                />
                <SelectField
                  {...{ name: "profileFamily", label: "Communication profile family", empty: "not known" }}
                  hint="Number after IEC 61784, from the manual of a drive."
                  choices={profileFamilyChoices}
                  defaultValue={profileFamily ?? ""}
                  error={errorOf("profileFamily")}
                />
              </>
            )}
          </EntryForm>
        )}
      </Dialog>
      <UndoBar message={done?.message ?? null} {...(done?.undo ? { onUndo: undo } : {})} onClose={close} />
    </>
  );
}
