import { stageFill } from "@/lib/view/stageFill";

interface StageBadgeProps {
  /** One or two characters inside the circle. */
  readonly letter: string;
  /** How full the circle is drawn, 0 empty to 5 full; null is a dashed outline. */
  readonly step: 0 | 1 | 2 | 3 | 4 | 5 | null;
  /** Always shown: the badge is never colour or letter alone. */
  readonly text: string;
}

const RADIUS = 10;
const CENTRE = 12;

function Fill({ step }: { readonly step: 0 | 1 | 2 | 3 | 4 | 5 }) {
  if (step === 0) return null;
  const fill = `var(--stage-${step})`;
  if (step === 5) return <circle cx={CENTRE} cy={CENTRE} r={RADIUS} fill={fill} />;
  return <path d={stageFill(step, { centre: CENTRE, radius: RADIUS })} fill={fill} />;
}

/** A stage as a circle that fills from A to F, with its letter inside and its name beside it. */
export function StageBadge({ letter, step, text }: StageBadgeProps) {
  const covered = step !== null && step >= 4;
  return (
    <span className="inline-flex items-baseline gap-1.5 whitespace-nowrap">
      <svg
        viewBox="0 0 24 24"
        className="-my-1 size-[1.5em] shrink-0 self-center"
        aria-hidden="true"
        focusable="false"
      >
        <circle cx={CENTRE} cy={CENTRE} r={RADIUS} fill="var(--sheet)" />
        {step === null ? null : <Fill step={step} />}
        <circle
          cx={CENTRE}
          cy={CENTRE}
          r={RADIUS}
          fill="none"
          stroke="var(--stage-line)"
          strokeWidth={letter.length > 1 ? 2.6 : 1.5}
          strokeDasharray={step === null ? "3 2.6" : undefined}
        />
        <text
          x={CENTRE}
          y={16.4}
          textAnchor="middle"
          fontSize={letter.length > 1 ? 10.5 : 12.5}
          fontWeight={700}
          fill={covered ? "var(--stage-letter-full)" : "var(--stage-letter)"}
        >
          {letter}
        </text>
      </svg>
      <span>
        <span className="sr-only">{letter}, </span>
        {text}
      </span>
    </span>
  );
}
