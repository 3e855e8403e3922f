interface EvidenceMarkProps {
  /** m measured, d documented, i inferred, a assumed. */
  readonly grade: "m" | "d" | "i" | "a";
  /** The word behind the letter; read out, and shown when `long`. */
  readonly text: string;
  readonly long?: boolean;
}

const EDGES = {
  m: "border-solid border-ink bg-ink text-paper",
  d: "border-solid border-ink text-ink",
  i: "border-dashed border-ink text-ink",
  a: "border-dotted border-ink text-ink",
} as const;

/** How well a value is known: full, outlined, dashed or dotted, with its letter. */
export function EvidenceMark({ grade, text, long = false }: EvidenceMarkProps) {
  return (
    <span className="inline-flex items-baseline gap-1 whitespace-nowrap" title={text}>
      <span
        aria-hidden="true"
        className={`inline-block min-w-[1.35em] border-[1.5px] px-[0.2em] text-center font-semibold text-[0.75rem] leading-[1.25] ${EDGES[grade]}`}
      >
        {grade}
      </span>
      <span className={long ? "text-ink-2 text-sm" : "sr-only"}>{text}</span>
    </span>
  );
}
