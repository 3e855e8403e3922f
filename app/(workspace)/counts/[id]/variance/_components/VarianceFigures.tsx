import { KeyFigure } from "@/app/_ui/KeyFigure";
import { KeyFigures } from "@/app/_ui/KeyFigures";
import { Notice } from "@/app/_ui/Notice";
import type { CountSheet, VarianceSheet } from "@/lib/view/count";
import { money } from "@/lib/view/format";
import { count, plainNumber } from "@/lib/view/number";

interface VarianceFiguresProps {
  readonly variance: VarianceSheet;
  readonly sheet: CountSheet;
}

/** What the count would change, in lines and money, and what stands in its way. */
export function VarianceFigures({ variance, sheet }: VarianceFiguresProps) {
  const { lines, notCounted, less, more, unknownPlates, moved } = variance;
  const differing = lines.filter(({ differs }) => differs).length;
  return (
    <>
      <KeyFigures>
        <KeyFigure
          label="Lines that differ"
          value={plainNumber(differing)}
          unit={`of ${lines.length} counted`}
        />
        <KeyFigure label="Less than on the book" value={money(less)} date="at the prices on record" />
        <KeyFigure label="More than on the book" value={money(more)} date="at the prices on record" />
      </KeyFigures>
      {notCounted > 0 ? (
        <Notice kind="info">{count(notCounted, "line is", "lines are")} not counted yet.</Notice>
      ) : null}
      {moved.length > 0 && sheet.postedOn === null ? (
        <Notice kind="problem" title="The shelf moved after it was counted">
          Bin {moved.map(({ bin }) => bin).join(", ")}: count there again. The new book is taken when the line
          is written.
        </Notice>
      ) : null}
      {unknownPlates.length > 0 ? (
        <Notice kind="caution" title="Plates nobody knows">
          {unknownPlates.map(({ plate, bin }) => `${plate} in ${bin}`).join(", ")}: not booked. Import or
          correct the part first, then put the pieces on the sheet again.
        </Notice>
      ) : null}
    </>
  );
}
