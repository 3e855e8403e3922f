import { AsOfLink } from "@/app/_ui/AsOfLink";
import { RowTable } from "@/app/_ui/RowTable";
import { percent } from "@/lib/view/chance";
import { exactMoney, money } from "@/lib/view/format";
import { plainNumber, quantity, significant } from "@/lib/view/number";
import type { SpendList, SpendStep } from "@/lib/view/spend";
import { day } from "@/lib/view/time";

const HEADS = [
  { text: "Place", end: true },
  "Part",
  "For",
  { text: "Price", end: true },
  { text: "Avoids", end: true },
  { text: "Per euro", end: true },
  { text: "Spent so far", end: true },
  { text: "Avoided so far", end: true },
];

function Why({ step, years }: { readonly step: SpendStep; readonly years: number }) {
  const { noSpare, nth, siteCode, number, avoids, unitCost, price } = step;
  return (
    <details className="disclosure prints">
      <summary className="text-sm">Why this one</summary>
      <div className="measure py-1 text-sm">
        Piece {plainNumber(nth)} of {number}, beside {quantity(step.usable)} usable in the group. Ordered
        today it is there on {day(step.arrivesOn)}
        {step.leadAssumed ? " (lead time not recorded: assumed)" : ""}. The chance that no site has one, mean
        over {years} years, goes from {percent(noSpare.before)} to {percent(noSpare.after)} (
        {significant(noSpare.before * 100, 2)} % to {significant(noSpare.after * 100, 2)} %), and {siteCode}{" "}
        waits less often for one from elsewhere. Together {money(avoids)} less lost ÷ {money(unitCost)} ={" "}
        {significant(avoids / unitCost, 3)} per euro.{" "}
        {price.pricedOn === null ? "The day of the price is not known." : `Price of ${day(price.pricedOn)}.`}{" "}
        {step.lastOrderOn === null ? "" : `Last order ${day(step.lastOrderOn)}. `}
        <AsOfLink href={`/pool/${step.partId}`}>Could one be moved instead?</AsOfLink>
      </div>
    </details>
  );
}

/** The list in buying order; each row opens to why. */
export function SpendTable({ list }: { readonly list: SpendList }) {
  return (
    <RowTable caption="Pieces in buying order" heads={HEADS}>
      {list.steps.map((step) => (
        <tr key={step.place}>
          <td data-align="end">{plainNumber(step.place)}</td>
          <th scope="row">
            <AsOfLink href={`/parts/${step.partId}`}>{step.number}</AsOfLink>
            <Why step={step} years={list.years} />
          </th>
          <td>{step.siteCode}</td>
          <td data-align="end">{exactMoney(step.price.amount, step.price.currency)}</td>
          <td data-align="end">{money(step.avoids)}</td>
          <td data-align="end">{significant(step.avoids / step.unitCost, 2)}</td>
          <td data-align="end">{money(step.spent)}</td>
          <td data-align="end">{money(step.avoided)}</td>
        </tr>
      ))}
    </RowTable>
  );
}
