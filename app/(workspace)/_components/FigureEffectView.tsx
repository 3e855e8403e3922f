import { AsOfLink } from "@/app/_ui/AsOfLink";
import { RowTable } from "@/app/_ui/RowTable";
import type { FigureEffect, GroupLoss, LineEffect } from "@/lib/view/figureEffect";
import { moneySpan } from "@/lib/view/format";
import { count } from "@/lib/view/number";

interface Props {
  readonly effect: FigureEffect;
}

const HEADS = ["Line", "Stop loss a year now", "Then", "Place now", "Then "];

/** What a change would do to losses and places: the group before and after with the span, then the lines that move. */
export function FigureEffectView({ effect: { before, after, moved, movedCount } }: Props) {
  return (
    <>
      <p className="measure">
        Expected stop loss a year: {groupWords(before)} now, {groupWords(after)} then.{" "}
        {movedCount === 0 ? "No line's loss or place moves." : `${count(movedCount, "line")} would move.`}
      </p>
      {moved.length === 0 ? null : (
        <div className="mt-3">
          <RowTable caption="Lines whose loss or place would move" heads={HEADS}>
            {moved.map((line) => (
              <tr key={line.code}>
                <th scope="row">
                  <AsOfLink href={`/lines/${encodeURIComponent(line.code)}`}>{line.code}</AsOfLink>
                </th>
                <td>{moneySpan(line.before)}</td>
                <td>{moneySpan(line.after)}</td>
                <td>{placeWord(line.placeBefore, line.before)}</td>
                <td>{placeWord(line.placeAfter, line.after)}</td>
              </tr>
            ))}
          </RowTable>
          {movedCount > moved.length ? (
            <p className="mt-2 text-ink-2">The {moved.length} that move most are shown.</p>
          ) : null}
        </div>
      )}
    </>
  );
}

function groupWords({ loss, lines, unknown }: GroupLoss): string {
  const gap = unknown === 0 ? "" : `, ${count(unknown, "line")} of ${lines} not known`;
  return `${moneySpan(loss)}${gap}`;
}

function placeWord(place: number | null, loss: LineEffect["before"]): string {
  if (place !== null) return String(place);
  return loss === null ? "not known" : "none";
}
