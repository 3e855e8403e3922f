import { KeyFigure } from "@/app/_ui/KeyFigure";
import { percent } from "@/lib/view/chance";
import { money } from "@/lib/view/format";
import { unknownParts } from "@/lib/view/lineDepth";
import type { LineDossier } from "@/lib/view/lineDossier";
import { quantity } from "@/lib/view/number";

const PARTS_SHOWN = 3;

/** What of the stop loss comes from not knowing, and of what; nothing without a cost per hour. */
export function UnknownFigure({ line }: { readonly line: LineDossier }) {
  const { unknownLoss, stopLoss } = line.result;
  if (unknownLoss === null || stopLoss === null) return null;
  const parts = unknownParts(line.drivers);
  const more = parts.length - PARTS_SHOWN;
  const made = parts.slice(0, PARTS_SHOWN).map(({ label, loss }) => `${label} ${money(loss)}`);
  return (
    <KeyFigure
      label="From unknowns"
      value={money(unknownLoss)}
      unit={stopLoss.mean > 0 ? `a year, ${percent(unknownLoss / stopLoss.mean)} of the loss` : "a year"}
      href={`/lines/${line.code}#depth`}
    >
      {parts.length === 0
        ? "Nothing unknown of its parts makes the line dearer."
        : `Would go were all that is unknown found at its best: ${made.join(", ")}${more > 0 ? ` and ${more} more` : ""}.`}
    </KeyFigure>
  );
}

/** The stop loss of the years ahead, as shelves erode and units leave. */
export function HorizonFigure({ line }: { readonly line: LineDossier }) {
  const { horizonLoss } = line.result;
  if (horizonLoss === null) return null;
  const [first, last] = [horizonLoss.byYear[0] ?? null, horizonLoss.byYear.at(-1) ?? null];
  return (
    <KeyFigure
      label={`Stop loss of ${quantity(horizonLoss.years)} years`}
      value={money(horizonLoss.loss)}
      unit="discounted"
      href={`/lines/${line.code}#depth`}
    >
      {`First year ${money(first)}, last year ${money(last)}: shelves erode, and units leave as planned.`}
    </KeyFigure>
  );
}
