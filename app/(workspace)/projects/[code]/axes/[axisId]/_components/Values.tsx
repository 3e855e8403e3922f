import { SelectField } from "@/app/_ui/field/SelectField";
import { TextField } from "@/app/_ui/field/TextField";
import type { AxisCheck } from "@/lib/retrofit/axisChecks";
import type { TypedEntry } from "@/lib/schema/axisRecord";

interface ValuesProps {
  readonly check: AxisCheck;
  readonly entry: TypedEntry;
  readonly type: (change: Partial<TypedEntry>) => void;
  readonly errorOf: (name: string) => string | undefined;
}

const RESULTS = [
  { value: "yes", label: "Passed" },
  { value: "no", label: "Not passed" },
] as const;

const needsBefore = ({ rule }: AxisCheck) =>
  ["equal", "within", "repeats", "notMore", "notLess"].includes(rule.kind);
const needsLimit = ({ rule }: AxisCheck) => ["within", "repeats", "most", "notMore"].includes(rule.kind);

/** What is measured for a check, by its rule: before, limit, after and instrument, or a plain result. */
export function Values({ check, entry, type, errorOf }: ValuesProps) {
  if (check.rule.kind === "confirmed")
    return (
      <SelectField
        name={`${check.id}-result`}
        label="Result"
        required
        empty="Not done yet"
        choices={RESULTS}
        value={entry.confirmed}
        onChange={({ target }) =>
          type({ confirmed: target.value === "yes" || target.value === "no" ? target.value : "" })
        }
        error={errorOf("confirmed")}
      />
    );
  const unit = check.unit ?? "";
  const field = (name: "asFound" | "limit" | "asLeft" | "instrument", label: string) => (
    <TextField
      name={`${check.id}-${name}`}
      label={label}
      required={name !== "instrument"}
      value={entry[name]}
      onChange={(event) => type({ [name]: event.target.value })}
      error={errorOf(name)}
    />
  );
  return (
    <>
      {needsBefore(check) ? field("asFound", `Before removal (${unit})`) : null}
      {needsLimit(check) ? field("limit", `Limit (${unit})`) : null}
      {field("asLeft", `${readingsOf(check)} (${unit})`)}
      {field("instrument", "Instrument")}
    </>
  );
}

function readingsOf({ rule }: AxisCheck): string {
  const count = rule.kind === "repeats" || rule.kind === "notMore" ? rule.readings : 1;
  return count > 1 ? `${count} readings with the new drive` : "With the new drive";
}
