"use client";

import { useState } from "react";
import { AsOfLink } from "@/app/_ui/AsOfLink";

interface Line {
  readonly text: string;
  readonly href: string | null;
}

interface Props {
  /** Kind and number of the stored thing, as the address of its origin names it. */
  readonly entity: string;
  readonly id: string;
  /** What people call it, for those who do not see where this stands. */
  readonly of: string;
}

/** Opens to the files and edits a stored thing comes from; asked for when it is opened. */
export function WhereFrom({ entity, id, of }: Props) {
  const [lines, setLines] = useState<readonly Line[] | null>(null);
  const ask = async () => {
    if (lines !== null) return;
    const answer = await fetch(`/api/provenance?${new URLSearchParams({ entity, id })}`).catch(() => null);
    const told: { lines: readonly Line[] } | null = answer?.ok ? await answer.json() : null;
    setLines(told?.lines ?? [{ text: "This could not be read just now.", href: null }]);
  };
  return (
    <details className="disclosure no-print font-normal text-sm" onToggle={() => void ask()}>
      <summary className="text-accent">
        Where from<span className="sr-only"> {of}</span>
      </summary>
      <ul className="mt-1 space-y-0.5 pl-4" aria-live="polite">
        {(lines ?? [{ text: "Looking…", href: null }]).map(({ text, href }) => (
          <li key={text}>{href === null ? text : <AsOfLink href={href}>{text}</AsOfLink>}</li>
        ))}
      </ul>
    </details>
  );
}
