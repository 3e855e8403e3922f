import { type ReactNode, useId } from "react";

interface SectionProps {
  readonly title: string;
  /** Sentence under the title. */
  readonly lead?: ReactNode;
  readonly actions?: ReactNode;
  /** Target of a link to this section. */
  readonly id?: string;
  readonly children: ReactNode;
}

/** A titled part of a page, set off by a rule. */
export function Section({ title, lead, actions, id, children }: SectionProps) {
  const heading = useId();
  return (
    <section id={id} aria-labelledby={heading} className="mt-9 first:mt-0">
      <div className="mb-3 flex flex-wrap items-baseline justify-between gap-x-6 gap-y-2 border-rule-2 border-b pb-1.5">
        <h2 id={heading} className="font-semibold text-xl">
          {title}
        </h2>
        {actions ? <div className="no-print flex flex-wrap gap-2">{actions}</div> : null}
      </div>
      {lead ? <p className="measure mb-4 text-ink-2">{lead}</p> : null}
      {children}
    </section>
  );
}
