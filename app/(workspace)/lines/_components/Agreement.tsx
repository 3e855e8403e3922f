import { KeyFigure } from "@/app/_ui/KeyFigure";
import { KeyFigures } from "@/app/_ui/KeyFigures";
import { lineAgreement } from "@/lib/view/lineAgreement";
import type { Ranking } from "@/lib/view/lineRanking";
import { NOT_KNOWN, plainNumber } from "@/lib/view/number";

/** How far the two orders agree, in one number and one plain sentence. */
export function Agreement({ ranking }: { readonly ranking: Ranking }) {
  const { tau, lines, sentence } = lineAgreement(ranking.lines);
  const uncosted = ranking.lines.length - lines;
  return (
    <>
      <KeyFigures>
        <KeyFigure
          label="Kendall's tau-b of the two ranks"
          value={tau === null ? NOT_KNOWN : plainNumber(tau, 2)}
          unit="from −1 to 1"
          date={`over ${lines} lines`}
        >
          {sentence}
        </KeyFigure>
      </KeyFigures>
      <p className="measure text-ink-2">
        The score is for the weekly look, the money for the budget. 1 is the same order, 0 no relation, −1 the
        reverse. {uncosted === 0 ? "" : `${uncosted} without a cost per hour are left out. `}
        Figures are estimates from sparse records, never a reason to run a machine that is not safe.
      </p>
    </>
  );
}
