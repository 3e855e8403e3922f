import type { ReactNode } from "react";

/** What every field of a form takes. */
export interface FieldProps {
  readonly label: string;
  readonly name: string;
  /** What to enter, said before an error can happen. */
  readonly hint?: ReactNode;
  /** What is wrong with the entry; from `error.fields?.[name]`. */
  readonly error?: string | undefined;
  readonly required?: boolean;
  readonly disabled?: boolean;
}

interface FieldFrameProps extends Pick<FieldProps, "label" | "hint" | "error" | "required"> {
  readonly id: string;
  readonly unit?: string | undefined;
  readonly children: ReactNode;
}

/** Attributes that tie a control to its hint and error. */
export function describedBy(id: string, { hint, error }: Pick<FieldProps, "hint" | "error">) {
  const ids = [hint ? `${id}-hint` : "", error ? `${id}-error` : ""].filter(Boolean).join(" ");
  return {
    id,
    "aria-describedby": ids === "" ? undefined : ids,
    "aria-invalid": error ? (true as const) : undefined,
  };
}

/** Label, hint, control and error of one field. */
export function FieldFrame({ id, label, hint, error, required, unit, children }: FieldFrameProps) {
  return (
    <div className="grid content-start gap-1">
      <label htmlFor={id} className="font-semibold text-[0.9375rem]">
        {label}
        {unit ? <span className="font-normal text-ink-2"> ({unit})</span> : null}
        {required ? null : <span className="font-normal text-ink-3 text-sm"> – optional</span>}
      </label>
      {hint ? (
        <p id={`${id}-hint`} className="text-ink-2 text-sm">
          {hint}
        </p>
      ) : null}
      {children}
      {error ? (
        <p id={`${id}-error`} className="border-worse border-l-4 pl-2 font-medium text-sm">
          {error}
        </p>
      ) : null}
    </div>
  );
}
