import { Derivation } from "@/app/_ui/Derivation";
import { percent } from "@/lib/view/chance";
import { money } from "@/lib/view/format";
import type { PoolOfPart } from "@/lib/view/poolMoves";
import { hours } from "@/lib/view/time";

function stepsOf({ moves, transferHours, target, groupNoSpare }: PoolOfPart, showsAmounts: boolean) {
  const saves = moves.reduce((sum, move) => sum + (move.saves ?? 0), 0);
  return [
    {
      label: "Way of a spare from another site",
      value: hours(transferHours),
      source: "assumption in use: common practice, no source",
    },
    {
      label: "No site has one",
      formula: "mean over 12 months, all sites one pool",
      value: percent(groupNoSpare),
      source: "the evaluation; no move changes it",
    },
    {
      label: "Own no-spare chance of a site",
      formula: "P(X ≥ K): own removals not made good ≥ own pieces that work, mean over 12 months",
      value: "table above",
      source: "the same rate, dates, lead time and repair as the pool",
    },
    {
      label: "Lost on the way, a year",
      formula:
        "stops × (cost of a stop with a spare from elsewhere − with an own one) × max(own empty, none anywhere)",
      value: "site by site",
    },
    { label: "A site gives while its own chance is at most", value: percent(target), source: "typed above" },
    ...(showsAmounts
      ? [
          {
            label: "All moves together save, a year",
            formula: "sum of what each takes off the takers less what it adds to the givers",
            value: money(saves),
          },
        ]
      : []),
  ];
}

interface MethodProps {
  readonly pool: PoolOfPart;
  readonly showsAmounts: boolean;
}

/** How the moves are found, and what they leave out. */
export function Method({ pool, showsAmounts }: MethodProps) {
  return (
    <Derivation title="How the moves are worked out" steps={stepsOf(pool, showsAmounts)}>
      <p>
        The ranking of lines takes all usable pieces of a part as one pool: a spare at another site helps,
        after its way, and the way is added only where a site has no piece at all. Moving a piece therefore
        does not change the chance that nobody has one; it changes how often a spare has to travel. This page
        looks closer: each site&apos;s own shelf against its own removals, so that the second and third piece
        at a site count too. For a site with none, and for one whose shelf outlasts the group&apos;s, both
        agree.
      </p>
      <p className="mt-2">
        One piece at a time is exact when all pieces work alike and fit everywhere and a site has fewer than
        about one removal under way; otherwise it may stop short of the best, never below what it shows. Left
        out: what other sites take from a shelf, pieces still to come, freight and duty, pieces damaged on the
        way. The customs mark is a reminder; the forwarder or the customs office decides.
      </p>
    </Derivation>
  );
}
