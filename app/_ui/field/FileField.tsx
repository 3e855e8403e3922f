import { type InputHTMLAttributes, useId } from "react";
import { describedBy, FieldFrame, type FieldProps } from "@/app/_ui/field/FieldFrame";

type Native = Pick<InputHTMLAttributes<HTMLInputElement>, "accept" | "multiple" | "onChange">;

/** A file from the person's disk; name the kinds taken in the hint. */
export function FileField({ label, hint, error, ...control }: FieldProps & Native) {
  const id = useId();
  return (
    <FieldFrame {...{ id, label, hint, error }} required={control.required ?? false}>
      <input {...control} {...describedBy(id, { hint, error })} type="file" className="input" />
    </FieldFrame>
  );
}
