import { Line, Rect, Svg } from "@react-pdf/renderer";
import { MID, PALE } from "@/lib/reports/pdf/looks";

const WIDTH = 120;
const HEIGHT = 8;
/** Between the strokes of the hatch. */
const STEP = 3;

/** A sum in two parts: solid what is there anyway, hatched the share that only a shortage adds. */
export function PartsMark({ share }: { readonly share: number }) {
  const from = WIDTH * (1 - Math.min(1, Math.max(0, share)));
  const strokes = Array.from(
    { length: Math.max(0, Math.floor((WIDTH - from) / STEP)) },
    (_, at) => from + STEP * at,
  );
  return (
    <Svg
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      style={{ width: WIDTH, height: HEIGHT, marginRight: 6, marginTop: 1 }}
    >
      <Rect x={0} y={0} width={from} height={HEIGHT} fill={MID} />
      <Rect
        x={from}
        y={0.3}
        width={WIDTH - from - 0.3}
        height={HEIGHT - 0.6}
        fill={PALE}
        fillOpacity={0.35}
        stroke={MID}
        strokeWidth={0.6}
      />
      {strokes.map((x) => (
        <Line key={x} x1={x} x2={x + STEP} y1={HEIGHT} y2={0} stroke={MID} strokeWidth={0.9} />
      ))}
    </Svg>
  );
}
