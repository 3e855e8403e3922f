import { CheckboxField } from "@/app/_ui/field/CheckboxField";
import { DateField } from "@/app/_ui/field/DateField";
import { NumberField } from "@/app/_ui/field/NumberField";
import { SelectField } from "@/app/_ui/field/SelectField";
import { TextField } from "@/app/_ui/field/TextField";
import type { TypedCount } from "@/lib/schema/count";
import { stockStates } from "@/lib/view/partShelf";

interface EntryFieldsProps {
  readonly entry: TypedCount;
  readonly type: (change: Partial<TypedCount>) => void;
  readonly errorOf: (name: string) => string | undefined;
}

const TESTED = [
  { value: "yes", label: "Yes, it ran" },
  { value: "no", label: "No" },
] as const;

/** What is asked of pieces in the hand. */
export function EntryFields({ entry, type, errorOf }: EntryFieldsProps) {
  return (
    <>
      <NumberField
        name="found"
        label="Pieces found"
        hint="0 when nothing is there; empty is not counted yet."
        required
        min={0}
        step={1}
        value={entry.found}
        onChange={({ target }) => type({ found: target.value })}
        error={errorOf("found")}
      />
      <SelectField
        name="state"
        label="Condition"
        required
        choices={stockStates}
        value={entry.state}
        onChange={({ target }) => type({ state: target.value as TypedCount["state"] })}
        error={errorOf("state")}
      />
      <DateField
        name="lastPoweredOn"
        label="Last powered on"
        hint="Empty leaves what is recorded."
        value={entry.lastPoweredOn}
        onChange={({ target }) => type({ lastPoweredOn: target.value })}
        error={errorOf("lastPoweredOn")}
      />
      <SelectField
        name="tested"
        label="Tested"
        hint="Usable but not tested is booked as unproven."
        empty="Not said"
        choices={TESTED}
        value={entry.tested}
        onChange={({ target }) => type({ tested: target.value as TypedCount["tested"] })}
      />
      <TextField
        name="holdReason"
        label="Put on hold because"
        value={entry.holdReason}
        onChange={({ target }) => type({ holdReason: target.value })}
        error={errorOf("holdReason")}
      />
      <TextField
        name="note"
        label="Note"
        value={entry.note}
        onChange={({ target }) => type({ note: target.value })}
        error={errorOf("note")}
      />
      <CheckboxField
        name="originUnknown"
        label="Where it comes from is not known"
        hint="Bought on the market or found: no spare until it is tested."
        checked={entry.originUnknown}
        onChange={({ target }) => type({ originUnknown: target.checked })}
      />
    </>
  );
}
