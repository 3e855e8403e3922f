import { Line, Rect, Svg } from "@react-pdf/renderer";
import { DARK, MID, PALE, RULE } from "@/lib/reports/pdf/looks";
import type { Span } from "@/lib/risk/evaluation";

interface SpanMarkProps {
  readonly span: Span;
  /** Upper end of the scale that the table's spans share, EUR. */
  readonly scale: number;
}

const WIDTH = 34;
const HEIGHT = 7;

/** The range of a figure as a bar on a shared scale, its mean as a tick across it. */
export function SpanMark({ span, scale }: SpanMarkProps) {
  const at = (value: number) => (scale <= 0 ? 0 : (Math.min(value, scale) / scale) * WIDTH);
  const mean = at(span.mean);
  return (
    <Svg
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      style={{ width: WIDTH, height: HEIGHT, marginRight: 3, marginTop: 1 }}
    >
      <Line x1={0} x2={WIDTH} y1={HEIGHT / 2} y2={HEIGHT / 2} stroke={RULE} strokeWidth={0.5} />
      <Rect
        x={at(span.low)}
        y={2}
        width={Math.max(at(span.high) - at(span.low), 0.5)}
        height={HEIGHT - 4}
        fill={PALE}
        stroke={MID}
        strokeWidth={0.5}
      />
      <Line x1={mean} x2={mean} y1={0} y2={HEIGHT} stroke={DARK} strokeWidth={1.4} />
    </Svg>
  );
}
