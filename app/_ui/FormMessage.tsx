import type { ReactNode } from "react";

interface FormMessageProps {
  readonly kind: "problem" | "done";
  /** Nothing is shown, and nothing announced, while this is empty. */
  readonly children?: ReactNode;
}

/** The answer to a form as a whole, announced to screen readers: what was refused and why, or what was done. */
export function FormMessage({ kind, children }: FormMessageProps) {
  const color = kind === "problem" ? "border-worse" : "border-accent";
  return (
    <div role={kind === "problem" ? "alert" : "status"}>
      {children ? <p className={`border-l-4 py-1 pl-3 ${color}`}>{children}</p> : null}
    </div>
  );
}
