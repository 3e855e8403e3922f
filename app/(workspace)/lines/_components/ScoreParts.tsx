import { StackBar } from "@/app/_ui/StackBar";
import { percent } from "@/lib/view/chance";
import { significant } from "@/lib/view/number";

interface ScorePartsProps {
  readonly score: number;
  readonly parts: { readonly stage: number; readonly spares: number; readonly repair: number };
}

const PARTS = [
  { name: "stage", look: "solid" },
  { name: "spares", look: "hatch" },
  { name: "repair", look: "pale" },
] as const;

/** A score from 0 to 100 as one bar in its three parts, with their shares in figures. */
export function ScoreParts({ score, parts }: ScorePartsProps) {
  const share = (name: keyof typeof parts) => (score === 0 ? 0 : Math.min(1, parts[name] / score));
  return (
    <span className="inline-grid w-full">
      <span className="whitespace-nowrap text-ink-2 text-xs">
        {PARTS.map(({ name }) => `${name} ${percent(share(name))}`).join(" · ")}
      </span>
      <StackBar
        parts={PARTS.map(({ name, look }) => ({ label: name, value: parts[name], look }))}
        max={100}
        text={PARTS.map(({ name }) => `${name} ${significant(parts[name], 2)} points`).join(", ")}
      />
    </span>
  );
}
