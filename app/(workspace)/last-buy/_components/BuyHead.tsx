import { KeyFigure } from "@/app/_ui/KeyFigure";
import { KeyFigures } from "@/app/_ui/KeyFigures";
import { type BuyDocument, priceOfSlip } from "@/lib/view/buyDocument";
import { money } from "@/lib/view/format";
import { plainNumber } from "@/lib/view/number";
import { day, distance } from "@/lib/view/time";

/** The quantity chosen, its span, its price, and until when to decide. */
export function BuyHead({ document }: { readonly document: BuyDocument }) {
  const [base] = document.cases;
  const slip = priceOfSlip(document);
  if (!base) return null;
  const decideBy = document.orderByOn ?? document.lastOrderOn;
  return (
    <KeyFigures>
      <KeyFigure
        label="Buy"
        value={plainNumber(base.quantity)}
        unit="units"
        span={`${plainNumber(base.low)} to ${plainNumber(base.high)} over the span of the rates`}
        href="#steps"
      />
      <KeyFigure label="Price" value={money(base.price)} span="at list price, without freight" />
      <KeyFigure
        label="A year's slip of every retrofit"
        value={slip ? `+${plainNumber(slip.units)}` : ""}
        unit="units"
        span={slip?.price == null ? "" : `${money(slip.price)} more, to be paid now`}
        href="#cases"
      />
      <KeyFigure
        label={document.orderByOn === null ? "Last order" : "Start the order by"}
        value={day(decideBy)}
        span={decideBy === null ? "no date is recorded" : distance(decideBy, document.asOf)}
      />
      <KeyFigure label="In service" value={plainNumber(document.units)} unit="units" />
    </KeyFigures>
  );
}
