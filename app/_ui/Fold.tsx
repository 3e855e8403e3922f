"use client";

import { type ReactNode, useId, useRef } from "react";
import { useFoldMemory } from "@/app/_ui/useFoldMemory";

interface FoldProps {
  readonly title: string;
  /** Target of a link to this part; also the name its state is remembered by. */
  readonly id: string;
  /** Kind of page, e.g. `line`: what was opened on one line is open on the next. */
  readonly page: string;
  /** What the part says, in a few words, while it is closed. */
  readonly figure?: ReactNode;
  /** Open unless this person closed it here before. */
  readonly open?: boolean;
  /** Sentence under the title. */
  readonly lead?: ReactNode;
  readonly children: ReactNode;
}

/** A titled part of a page that is opened when it is needed; printed open. `OpenTarget` opens it for a link. */
export function Fold({ title, id, page, figure, open = false, lead, children }: FoldProps) {
  const heading = useId();
  const details = useRef<HTMLDetailsElement>(null);
  useFoldMemory(details, page, id);
  return (
    <section id={id} aria-labelledby={heading} className="border-rule-2 border-b">
      <details ref={details} open={open} data-fold="" className="disclosure prints">
        <summary className="flex flex-wrap items-baseline gap-x-4 gap-y-1 py-2.5">
          <h2 id={heading} className="font-semibold text-lg">
            {title}
          </h2>
          {figure ? <span className="text-ink-2">{figure}</span> : null}
        </summary>
        <div className="pb-6">
          {lead ? <p className="measure mb-4 text-ink-2">{lead}</p> : null}
          {children}
        </div>
      </details>
    </section>
  );
}
