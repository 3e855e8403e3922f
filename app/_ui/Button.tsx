import type { ButtonHTMLAttributes } from "react";

export type ButtonKind = "primary" | "plain" | "quiet" | "danger";

interface ButtonProps extends ButtonHTMLAttributes<HTMLButtonElement> {
  readonly kind?: ButtonKind;
}

/** A push button; one primary at most on a form or page. Does not submit unless `type="submit"`. */
export function Button({ kind = "plain", type = "button", className = "", ...rest }: ButtonProps) {
  return <button {...rest} type={type} data-kind={kind} className={`button ${className}`} />;
}
