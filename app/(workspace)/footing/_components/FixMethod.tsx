import { Derivation, type DerivationStep } from "@/app/_ui/Derivation";
import type { NextFixes } from "@/lib/data/nextFixes";
import { money } from "@/lib/view/format";
import { moveWords } from "@/lib/view/nextFix";
import { plainNumber } from "@/lib/view/number";

interface FixMethodProps {
  readonly next: NextFixes;
  readonly showsAmounts: boolean;
}

/** How the order of the fixes came about, on the first of them. */
export function FixMethod({ next, showsAmounts }: FixMethodProps) {
  const [first] = next.fixes;
  if (!first) return null;
  const { hours, pieces, crossings, places, unknownLoss, kind } = first;
  return (
    <Derivation
      title={`How the order is worked out, on “${first.what}”`}
      steps={[
        {
          label: "Effort",
          formula: `${plainNumber(pieces)} × ${plainNumber(next.hours[kind], 2)} h`,
          ...{ value: plainNumber(hours, 1), unit: "h", source: "hours below" },
        },
        {
          label: "Lines it can carry over the cut",
          formula: `place ${next.cut} is the last within`,
          value: plainNumber(crossings),
          source: next.plan === null ? "first lines of the ranking, own choice" : `plan ${next.plan}`,
        },
        {
          label: "Places moved",
          formula: first.moves.slice(0, 3).map(moveWords).join("; "),
          ...{ value: plainNumber(places), source: "draws, the unknown at its 5 % and 95 % point" },
        },
        ...(showsAmounts ? [unknownStep(unknownLoss)] : []),
        {
          label: "Per hour",
          formula: `${crossings} ÷ ${plainNumber(hours, 1)}, then ${plainNumber(places)} ÷ ${plainNumber(hours, 1)}`,
          value: `${plainNumber(crossings / hours, 2)} lines, ${plainNumber(places / hours, 2)} places`,
        },
      ]}
    >
      <p className="measure text-ink-2">
        Lines carried over the cut per hour come first, then places per hour, then money per hour; the columns
        sort by any of them. Places are of the median in the draws. The money of a part is shared between
        counting it and dating it where both are open, so each is a ceiling. What the draws do not vary, such
        as lead times and buffers, is not in this list and stands in the board above.
      </p>
    </Derivation>
  );
}

function unknownStep(unknownLoss: number | null): DerivationStep {
  return {
    label: "Loss from not knowing",
    ...(unknownLoss === null
      ? { value: "not known", source: "the evaluation gives none for a cost" }
      : {
          value: money(unknownLoss),
          unit: "a year, at most",
          source: "loss less that at the best state",
        }),
  };
}
