import { KeyFigure } from "@/app/_ui/KeyFigure";
import { KeyFigures } from "@/app/_ui/KeyFigures";
import { Notice } from "@/app/_ui/Notice";
import { money } from "@/lib/view/format";
import { plainNumber, significant } from "@/lib/view/number";
import { firstBelowCost, MOST_PIECES_BOUGHT, type SpendList } from "@/lib/view/spend";

/** What the budget buys, in four figures. */
export function SpendFigures({ list }: { readonly list: SpendList }) {
  const last = list.steps.at(-1);
  const first = list.steps[0];
  if (!last || !first) return null;
  const below = firstBelowCost(list.steps);
  return (
    <>
      <KeyFigures>
        <KeyFigure label="Pieces bought" value={plainNumber(list.steps.length)} assumed>
          of {plainNumber(list.offered)} parts that can be ordered and have a price
        </KeyFigure>
        <KeyFigure label="Spent" value={money(last.spent)}>
          of {money(list.budget)}
        </KeyFigure>
        <KeyFigure label={`Avoided in ${list.years} years`} value={money(last.avoided)} assumed>
          discounted, at the mean of the uncertain rates
        </KeyFigure>
        <KeyFigure
          label="Avoided per euro"
          value={significant(last.avoided / last.spent, 2)}
          span={`first piece ${significant(first.avoids / first.unitCost, 2)}, last ${significant(last.avoids / last.unitCost, 2)}`}
        />
      </KeyFigures>
      {below === null ? null : (
        <Notice kind="info">
          From piece {plainNumber(below)} on, a piece avoids less than it costs: the money may be better spent
          elsewhere.
        </Notice>
      )}
      {list.steps.length === MOST_PIECES_BOUGHT ? (
        <Notice kind="info">
          The list ends at {plainNumber(MOST_PIECES_BOUGHT)} pieces; the rest of the budget is not spent.
        </Notice>
      ) : null}
    </>
  );
}
