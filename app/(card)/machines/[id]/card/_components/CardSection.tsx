import { type ReactNode, useId } from "react";

interface CardSectionProps {
  /** Target of a link at the head of the card. */
  readonly id: string;
  readonly title: string;
  readonly lead?: string;
  readonly children: ReactNode;
}

/** A part of the card, set off by a rule; tighter than a section of a page. */
export function CardSection({ id, title, lead, children }: CardSectionProps) {
  const heading = useId();
  return (
    <section id={id} aria-labelledby={heading} className="card-section">
      <h2 id={heading}>{title}</h2>
      {lead === undefined ? null : <p className="text-ink-2">{lead}</p>}
      {children}
    </section>
  );
}
