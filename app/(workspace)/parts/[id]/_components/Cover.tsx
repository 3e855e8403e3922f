import { LineSpanChart } from "@/app/_ui/chart/LineSpanChart";
import { KeyFigure } from "@/app/_ui/KeyFigure";
import { KeyFigures } from "@/app/_ui/KeyFigures";
import { Section } from "@/app/_ui/Section";
import { SimulationCheck } from "@/app/(workspace)/parts/[id]/_components/SimulationCheck";
import { chance, percent, perYear } from "@/lib/view/chance";
import { plainNumber, quantity } from "@/lib/view/number";
import { coverChart, depletionText, isAlwaysEmpty } from "@/lib/view/partCover";
import type { PartDossier } from "@/lib/view/partDossier";
import type { SimulatedMonth } from "@/lib/view/partSimulation";

interface CoverProps {
  readonly part: PartDossier;
  /** Null is not asked for. */
  readonly simulated: readonly SimulatedMonth[] | null;
}

/** How long the spares of the group last: chance of an empty shelf by month, and the depletion days. */
export function Cover({ part, simulated }: CoverProps) {
  const { pool, asOf } = part;
  if (pool === null)
    return (
      <Section title="How long the spares last" id="cover">
        <p>Nothing to compute: the part is installed nowhere and on no shelf.</p>
      </Section>
    );
  const { noSpare } = pool;
  return (
    <Section
      title="How long the spares last"
      id="cover"
      lead="All sites draw on one pool. The curve counts removals not made good by orders and repairs against the pieces expected to work."
    >
      <KeyFigures>
        <KeyFigure
          label="No-spare chance, mean of 12 months"
          value={percent(noSpare.mean)}
          span={`${percent(noSpare.low)} to ${percent(noSpare.high)}`}
          assumed={pool.assumed.length > 0}
        >
          {chance(noSpare.mean, "failures")}
        </KeyFigure>
        <KeyFigure label="Likely empty (P80)" value={depletionText(pool.depletionP80, part)}>
          even chance (P50): {depletionText(pool.depletionP50, part)}
        </KeyFigure>
        <KeyFigure label="Removals, whole group" value={perYear(pool.removalsPerYear)}>
          from {plainNumber(pool.installed)} units installed
        </KeyFigure>
        <KeyFigure
          label="Usable, whole group"
          value={quantity(pool.usable)}
          unit={pool.book === null ? "book not counted" : `of ${plainNumber(pool.book)} on the books`}
        />
      </KeyFigures>
      {isAlwaysEmpty(pool) ? (
        <p className="measure mt-4">
          In every month computed a failure finds the shelf empty: a curve would be one straight line.
        </p>
      ) : (
        <LineSpanChart chart={coverChart(pool, asOf)} />
      )}
      <p className="measure text-ink-2 text-sm">
        P50 and P80 are the first days the chance reaches one half and four fifths. Sparse records: a 3 %
        chance happens. Not a reason to run an unsafe machine.
      </p>
      <SimulationCheck partId={part.id} months={simulated} />
    </Section>
  );
}
