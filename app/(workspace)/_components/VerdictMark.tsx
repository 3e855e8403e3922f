import type { VerdictState } from "@/lib/retrofit/compatibility/verdict";

const LOOKS = {
  clear: { sign: "✓", edge: "border-rule-2" },
  caution: { sign: "△", edge: "border-ink" },
  unknown: { sign: "?", edge: "border-ink border-dotted" },
  blocked: { sign: "▼", edge: "border-worse" },
} as const;

/** What a rule says, by sign and word; the edge repeats it. */
export function VerdictMark({ state }: { readonly state: VerdictState }) {
  const { sign, edge } = LOOKS[state];
  return (
    <span className={`whitespace-nowrap border px-1 text-ink text-xs ${edge}`}>
      <span aria-hidden="true">{sign} </span>
      {state}
    </span>
  );
}
