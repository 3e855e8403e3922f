import { type InputHTMLAttributes, useId } from "react";
import { describedBy, type FieldProps } from "@/app/_ui/field/FieldFrame";

type Native = Pick<
  InputHTMLAttributes<HTMLInputElement>,
  "defaultChecked" | "checked" | "onChange" | "value"
>;

/** Yes or no; the label says what a tick means. */
export function CheckboxField({ label, hint, error, ...control }: FieldProps & Native) {
  const id = useId();
  return (
    <div>
      <label htmlFor={id} className="inline-flex min-h-9 cursor-pointer items-center gap-2.5 max-sm:min-h-11">
        <input {...control} {...describedBy(id, { hint, error })} type="checkbox" className="tick" />
        <span>{label}</span>
      </label>
      {hint ? (
        <p id={`${id}-hint`} className="text-ink-2 text-sm">
          {hint}
        </p>
      ) : null}
      {error ? (
        <p id={`${id}-error`} className="border-worse border-l-4 pl-2 font-medium text-sm">
          {error}
        </p>
      ) : null}
    </div>
  );
}
