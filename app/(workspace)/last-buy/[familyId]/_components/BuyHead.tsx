import { KeyFigure } from "@/app/_ui/KeyFigure";
import { KeyFigures } from "@/app/_ui/KeyFigures";
import { money } from "@/lib/view/format";
import { type CaseRow, type LastBuyInput, type LastBuySheet, priceOfBuy } from "@/lib/view/lastBuySheet";
import { plainNumber } from "@/lib/view/number";
import { day, distance } from "@/lib/view/time";

interface BuyHeadProps {
  readonly input: LastBuyInput;
  readonly sheet: LastBuySheet;
  readonly cases: readonly CaseRow[];
}

/** The quantity by size and shared, its span, its price, and until when to decide. */
export function BuyHead({ input, sheet, cases }: BuyHeadProps) {
  const [base] = cases;
  const slipped = cases.find(({ asked }) => asked.slipYears > 0);
  const units = input.installed.reduce((sum, one) => sum + one.units, 0);
  if (!base) return null;
  const decideBy = sheet.orderByOn ?? sheet.lastOrderOn;
  return (
    <KeyFigures>
      <KeyFigure
        label="Buy"
        value={plainNumber(base.buy.quantity)}
        unit="units"
        span={`${plainNumber(base.buy.low)} to ${plainNumber(base.buy.high)} over the span of the rates`}
        href="#steps"
      />
      <KeyFigure
        label="Price"
        value={money(priceOfBuy(base.buy, input.parts))}
        span="at list price, without freight"
      />
      <KeyFigure
        label="A year's slip of every retrofit"
        value={slipped ? `+${plainNumber(slipped.buy.quantity - base.buy.quantity)}` : ""}
        unit="units"
        href="#cases"
      />
      <KeyFigure
        label={sheet.orderByOn === null ? "Last order" : "Start the order by"}
        value={day(decideBy)}
        span={decideBy === null ? "no date is recorded" : distance(decideBy, input.asOf)}
      />
      <KeyFigure label="In service" value={plainNumber(units)} unit="units" />
    </KeyFigures>
  );
}
