import { type SelectHTMLAttributes, useId } from "react";
import { describedBy, FieldFrame, type FieldProps } from "@/app/_ui/field/FieldFrame";

export interface Choice {
  readonly value: string;
  readonly label: string;
}

interface SelectFieldProps
  extends FieldProps,
    Pick<SelectHTMLAttributes<HTMLSelectElement>, "defaultValue" | "value" | "onChange"> {
  readonly choices: readonly Choice[];
  /** Text of the empty choice, e.g. `Choose a line`; without it the first choice is taken. */
  readonly empty?: string;
}

/** One of a short list. */
export function SelectField({ label, hint, error, choices, empty, ...control }: SelectFieldProps) {
  const id = useId();
  return (
    <FieldFrame {...{ id, label, hint, error }} required={control.required ?? false}>
      <select {...control} {...describedBy(id, { hint, error })} className="input">
        {empty === undefined ? null : <option value="">{empty}</option>}
        {choices.map((choice) => (
          <option key={choice.value} value={choice.value}>
            {choice.label}
          </option>
        ))}
      </select>
    </FieldFrame>
  );
}
