import type { ReactNode } from "react";

interface EmptyStateProps {
  /** What is missing, e.g. `No plans yet`. */
  readonly title: string;
  /** What to do so that something stands here. */
  readonly children: ReactNode;
  readonly actions?: ReactNode;
}

/** Stands where data would stand: says what is missing and what to do. */
export function EmptyState({ title, children, actions }: EmptyStateProps) {
  return (
    <div className="border-rule-2 border-y border-dashed py-8">
      <p className="font-semibold text-lg">{title}</p>
      <div className="measure mt-1 text-ink-2">{children}</div>
      {actions ? <div className="mt-4 flex flex-wrap gap-2">{actions}</div> : null}
    </div>
  );
}
