import { type InputHTMLAttributes, useId } from "react";
import { describedBy, FieldFrame, type FieldProps } from "@/app/_ui/field/FieldFrame";

type Native = Pick<
  InputHTMLAttributes<HTMLInputElement>,
  "defaultValue" | "value" | "onChange" | "min" | "max"
>;

/** A calendar day; gives and takes `YYYY-MM-DD`. */
export function DateField({ label, hint, error, ...control }: FieldProps & Native) {
  const id = useId();
  return (
    <FieldFrame {...{ id, label, hint, error }} required={control.required ?? false}>
      <input {...control} {...describedBy(id, { hint, error })} type="date" className="input max-w-56" />
    </FieldFrame>
  );
}
