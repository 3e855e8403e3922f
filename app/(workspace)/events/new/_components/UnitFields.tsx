import { SelectField } from "@/app/_ui/field/SelectField";
import { TextField } from "@/app/_ui/field/TextField";
import type { Refusal } from "@/lib/access/action";
import { type EventPlace, type SpareLot, spareWords, unitFates } from "@/lib/view/eventCapture";

interface UnitFieldsProps {
  readonly refusal: Refusal | null;
  readonly place: EventPlace;
  readonly spares: readonly SpareLot[];
}

/** The unit put in and where it came from, the unit taken out and where it goes. */
export function UnitFields({ refusal, place, spares }: UnitFieldsProps) {
  const fields = refusal?.fields;
  return (
    <>
      <SelectField
        name="lotId"
        label="Spare taken from"
        hint={spares.length === 0 ? `No piece of ${place.part ?? "this part"} is recorded here` : undefined}
        empty="None of the recorded ones"
        choices={spares.map((lot) => ({ value: lot.id, label: spareWords(lot) }))}
        error={fields?.lotId}
      />
      <TextField name="serialIn" label="Serial of the unit put in" maxLength={60} error={fields?.serialIn} />
      <TextField name="revisionIn" label="Its revision" maxLength={20} error={fields?.revisionIn} />
      <SelectField
        name="unitOut"
        label="The unit taken out"
        required
        choices={unitFates}
        error={fields?.unitOut}
      />
      <TextField
        name="binOut"
        label="Bin it lies in"
        hint="When it goes to the shelf"
        maxLength={40}
        error={fields?.binOut}
      />
    </>
  );
}
