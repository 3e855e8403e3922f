import { RowTable } from "@/app/_ui/RowTable";
import { Section } from "@/app/_ui/Section";
import type { BuyDocument } from "@/lib/view/buyDocument";
import { money } from "@/lib/view/format";
import { plainNumber } from "@/lib/view/number";

const HEADS = [
  "If",
  { text: "Unit-years to provide for", end: true },
  { text: "Needed on average", end: true },
  { text: "Buy", end: true },
  { text: "Low to high", end: true },
  { text: "Price", end: true },
];

/** One question, five answers: which assumption the quantity hangs on. */
export function BuyCases({ document }: { readonly document: BuyDocument }) {
  return (
    <Section
      id="cases"
      title="What the quantity hangs on"
      lead="The same demand under each assumption in turn. Sharing all sizes as one counts a small drive as a spare for a large one."
    >
      <RowTable caption="Quantities by assumption" heads={HEADS}>
        {document.cases.map(({ label, exposure, demand, quantity, low, high, price }) => (
          <tr key={label}>
            <th scope="row">{label}</th>
            <td data-align="end">{plainNumber(exposure)}</td>
            <td data-align="end">{plainNumber(demand, 1)}</td>
            <td data-align="end" className="font-semibold">
              {plainNumber(quantity)}
            </td>
            <td data-align="end">{`${plainNumber(low)}–${plainNumber(high)}`}</td>
            <td data-align="end">{money(price)}</td>
          </tr>
        ))}
      </RowTable>
    </Section>
  );
}
