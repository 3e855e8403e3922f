import { SelectField } from "@/app/_ui/field/SelectField";
import { TextField } from "@/app/_ui/field/TextField";
import type { AxisCheck } from "@/lib/retrofit/axisChecks";
import type { TypedEntry } from "@/lib/schema/axisRecord";
import { beforeWords, checkUnit, readingsWords, takesBefore, takesLimit } from "@/lib/view/axisRule";

interface ValuesProps {
  readonly check: AxisCheck;
  readonly travelUnit: string | null;
  readonly entry: TypedEntry;
  readonly type: (change: Partial<TypedEntry>) => void;
  readonly errorOf: (name: string) => string | undefined;
}

const RESULTS = [
  { value: "yes", label: "Passed" },
  { value: "no", label: "Not passed" },
] as const;

/** What is measured for a check, by its rule: before, limit, after and instrument, or a plain result. */
export function Values({ check, travelUnit, entry, type, errorOf }: ValuesProps) {
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
  const unit = checkUnit(check, travelUnit) ?? "";
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
      {takesBefore(check) ? field("asFound", `${beforeWords(check)} (${unit})`) : null}
      {takesLimit(check) ? field("limit", `Limit (${unit})`) : null}
      {field("asLeft", `${readingsWords(check)} (${unit})`)}
      {field("instrument", "Instrument")}
    </>
  );
}
