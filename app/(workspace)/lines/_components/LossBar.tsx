import type { Span } from "@/lib/risk/evaluation";
import { money, moneySpan } from "@/lib/view/format";

interface LossBarProps {
  readonly span: Span | null;
  readonly baseLoss: number | null;
  readonly shortageLoss: number | null;
  /** End of the scale all bars of the column share, EUR a year. */
  readonly max: number;
  /** Rests on a cost nobody approved: dotted outline. */
  readonly assumed?: boolean;
}

/** A stop loss on a shared scale: base part solid, shortage part hatched, the span as a whisker below. */
export function LossBar({ span, baseLoss, shortageLoss, max, assumed = false }: LossBarProps) {
  if (span === null || max <= 0) return <span className="text-ink-3">not known</span>;
  const share = (value: number) => `${Math.min(100, (100 * value) / max)}%`;
  const text = `${moneySpan(span)} a year: base part ${money(baseLoss)}, shortage part ${money(shortageLoss)}`;
  return (
    <span role="img" aria-label={text} title={text} className="inline-block w-full min-w-32 max-w-60">
      <span className={`flex h-2.5 ${assumed ? "assumed" : ""}`}>
        <span className="solid h-full" style={{ width: share(baseLoss ?? 0) }} />
        <span className="hatch h-full" style={{ width: share(shortageLoss ?? 0) }} />
      </span>
      <span className="relative mt-0.5 block h-1.5 border-rule-2 border-b">
        <span
          className="absolute bottom-0 h-1.5 border-ink-2 border-x border-b-2"
          style={{ left: share(span.low), width: share(span.high - span.low) }}
        />
      </span>
    </span>
  );
}
