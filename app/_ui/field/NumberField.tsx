import { type InputHTMLAttributes, useId } from "react";
import { describedBy, FieldFrame, type FieldProps } from "@/app/_ui/field/FieldFrame";

type Native = Pick<
  InputHTMLAttributes<HTMLInputElement>,
  "defaultValue" | "value" | "onChange" | "min" | "max" | "step"
>;

interface NumberFieldProps extends FieldProps, Native {
  /** Shown beside the label, e.g. `EUR/h`. */
  readonly unit?: string;
}

/** A number with its unit; `step="any"` unless told otherwise, so decimals are never refused by accident. */
export function NumberField({ label, hint, error, unit, step = "any", ...control }: NumberFieldProps) {
  const id = useId();
  return (
    <FieldFrame {...{ id, label, hint, error, unit }} required={control.required ?? false}>
      <input
        {...control}
        {...describedBy(id, { hint, error })}
        type="number"
        inputMode="decimal"
        step={step}
        className="input max-w-56 text-right"
      />
    </FieldFrame>
  );
}
