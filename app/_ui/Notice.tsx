import type { ReactNode } from "react";

interface NoticeProps {
  readonly kind: "info" | "caution" | "problem";
  readonly title?: string;
  readonly children: ReactNode;
}

const LOOKS = {
  info: { word: "Note", edge: "border-accent" },
  caution: { word: "Caution", edge: "border-ink" },
  problem: { word: "Problem", edge: "border-worse" },
} as const;

const SHAPES = {
  info: <path d="M8 1.5a6.5 6.5 0 1 0 0 13a6.5 6.5 0 1 0 0-13M8 7V11.5M8 4.2V5.4" />,
  caution: <path d="M8 1.5L15 14H1ZM8 6V9.5M8 11V12.3" />,
  problem: <path d="M5 1.5H11L14.5 5V11L11 14.5H5L1.5 11V5ZM5.8 5.8L10.2 10.2M10.2 5.8L5.8 10.2" />,
} as const;

/** A message that belongs to the place it stands in; shape and word tell the kind, not colour. */
export function Notice({ kind, title, children }: NoticeProps) {
  const { word, edge } = LOOKS[kind];
  return (
    <div className={`my-3 border-l-4 bg-shade px-4 py-2.5 ${edge}`}>
      <p className="label flex items-center gap-1.5">
        <svg viewBox="0 0 16 16" className="size-4 fill-none stroke-[1.4] stroke-ink" aria-hidden="true">
          {SHAPES[kind]}
        </svg>
        {word}
      </p>
      {title ? <p className="font-semibold">{title}</p> : null}
      <div className="measure">{children}</div>
    </div>
  );
}
