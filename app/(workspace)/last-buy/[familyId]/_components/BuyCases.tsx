import { RowTable } from "@/app/_ui/RowTable";
import { Section } from "@/app/_ui/Section";
import { money } from "@/lib/view/format";
import { type CaseRow, type LastBuyInput, priceOfBuy } from "@/lib/view/lastBuySheet";
import { plainNumber } from "@/lib/view/number";

const HEADS = [
  "If",
  { text: "Unit-years to provide for", end: true },
  { text: "Needed on average", end: true },
  { text: "Buy", end: true },
  { text: "Low to high", end: true },
  { text: "Price", end: true },
];

interface BuyCasesProps {
  readonly cases: readonly CaseRow[];
  readonly parts: LastBuyInput["parts"];
}

/** One question, five answers: which assumption the quantity hangs on. */
export function BuyCases({ cases, parts }: BuyCasesProps) {
  return (
    <Section
      id="cases"
      title="What the quantity hangs on"
      lead="The same demand under each assumption in turn. Sharing all sizes as one counts a small drive as a spare for a large one."
    >
      <RowTable caption="Quantities by assumption" heads={HEADS}>
        {cases.map(({ label, buy }) => (
          <tr key={label}>
            <th scope="row">{label}</th>
            <td data-align="end">
              {plainNumber(buy.groups.reduce((sum, { exposure }) => sum + exposure, 0))}
            </td>
            <td data-align="end">
              {plainNumber(
                buy.groups.reduce((sum, { demand }) => sum + demand, 0),
                1,
              )}
            </td>
            <td data-align="end" className="font-semibold">
              {plainNumber(buy.quantity)}
            </td>
            <td data-align="end">{`${plainNumber(buy.low)}–${plainNumber(buy.high)}`}</td>
            <td data-align="end">{money(priceOfBuy(buy, parts))}</td>
          </tr>
        ))}
      </RowTable>
    </Section>
  );
}
