import { percent } from "@/lib/view/chance";
import { significant } from "@/lib/view/number";

interface ScorePartsProps {
  readonly score: number;
  readonly parts: { readonly stage: number; readonly spares: number; readonly repair: number };
}

const LOOKS = { stage: "bg-money-5", spares: "bg-money-4", repair: "bg-money-2" } as const;
const NAMES = ["stage", "spares", "repair"] as const;

/** A score from 0 to 100 as one bar in its three parts, with their shares in figures. */
export function ScoreParts({ score, parts }: ScorePartsProps) {
  const share = (name: keyof typeof LOOKS) => (score === 0 ? 0 : Math.min(1, parts[name] / score));
  const text = NAMES.map((name) => `${name} ${significant(parts[name], 2)} points`).join(", ");
  return (
    <span className="inline-block w-full min-w-36">
      <span role="img" aria-label={text} title={text} className="flex h-2.5 bg-shade">
        {NAMES.map((name) => (
          <span
            key={name}
            className={`h-full border-sheet border-r ${LOOKS[name]}`}
            style={{ width: `${parts[name]}%` }}
          />
        ))}
      </span>
      <span className="block text-ink-2 text-xs">
        {NAMES.map((name) => `${name} ${percent(share(name))}`).join(" · ")}
      </span>
    </span>
  );
}
