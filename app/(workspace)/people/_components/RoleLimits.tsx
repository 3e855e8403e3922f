import { CheckboxField } from "@/app/_ui/field/CheckboxField";
import { DateField } from "@/app/_ui/field/DateField";
import type { RoleEntry } from "@/lib/view/roleEntry";

interface RoleLimitsProps {
  readonly entry: RoleEntry;
  readonly name: string;
  readonly onChange: (entry: RoleEntry) => void;
}

/** What of a role this person has not: amounts of money, recording, and the time after its last day. */
export function RoleLimits({ entry, name, onChange }: RoleLimitsProps) {
  const isContractor = entry.role === "contractor";
  return (
    <>
      <CheckboxField
        label="Sees amounts of money there"
        name={`${name}-amounts`}
        checked={entry.amounts}
        onChange={(event) => onChange({ ...entry, amounts: event.target.checked })}
      />
      {isContractor ? (
        <CheckboxField
          label="Records axis steps and axis checks"
          name={`${name}-records`}
          checked={entry.records}
          onChange={(event) => onChange({ ...entry, records: event.target.checked })}
        />
      ) : (
        <DateField
          label="Until"
          name={`${name}-until`}
          hint="Last day, to its end in UTC; empty is without end."
          value={entry.endsOn}
          onChange={(event) => onChange({ ...entry, endsOn: event.target.value })}
        />
      )}
    </>
  );
}
