import { type InputHTMLAttributes, useId } from "react";
import { describedBy, FieldFrame, type FieldProps } from "@/app/_ui/field/FieldFrame";

type Native = Pick<
  InputHTMLAttributes<HTMLInputElement>,
  "defaultValue" | "value" | "onChange" | "autoComplete" | "placeholder" | "maxLength" | "spellCheck"
>;

interface TextFieldProps extends FieldProps, Native {
  readonly type?: "text" | "email" | "password" | "search" | "url";
}

/** One line of text. */
export function TextField({ label, hint, error, type = "text", ...control }: TextFieldProps) {
  const id = useId();
  return (
    <FieldFrame {...{ id, label, hint, error }} required={control.required ?? false}>
      <input {...control} {...describedBy(id, { hint, error })} type={type} className="input" />
    </FieldFrame>
  );
}
