import { type TextareaHTMLAttributes, useId } from "react";
import { describedBy, FieldFrame, type FieldProps } from "@/app/_ui/field/FieldFrame";

type Native = Pick<
  TextareaHTMLAttributes<HTMLTextAreaElement>,
  "defaultValue" | "value" | "onChange" | "rows" | "placeholder" | "maxLength"
>;

/** Text of several lines. */
export function TextareaField({ label, hint, error, rows = 3, ...control }: FieldProps & Native) {
  const id = useId();
  return (
    <FieldFrame {...{ id, label, hint, error }} required={control.required ?? false}>
      <textarea {...control} {...describedBy(id, { hint, error })} rows={rows} className="input" />
    </FieldFrame>
  );
}
