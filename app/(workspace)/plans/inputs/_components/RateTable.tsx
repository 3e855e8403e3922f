import { RowTable } from "@/app/_ui/RowTable";
import { Section } from "@/app/_ui/Section";
import { exchangeRate } from "@/lib/view/format";
import type { BudgetRate } from "@/lib/view/planInputs";
import { day } from "@/lib/view/time";

/** The rates local money is turned into euros with. */
export function RateTable({ rates }: { readonly rates: readonly BudgetRate[] }) {
  return (
    <Section title="Budget rates" lead="All comparisons are in EUR at these rates, whatever the market does.">
      <RowTable caption="Budget rates" heads={["Currency", { text: "Rate", end: true }, "Holds from"]}>
        {rates.map(({ currency, perEuro, validFrom }) => (
          <tr key={currency}>
            <th scope="row">{currency}</th>
            <td data-align="end">{exchangeRate(String(perEuro), currency)}</td>
            <td>{day(validFrom)}</td>
          </tr>
        ))}
      </RowTable>
    </Section>
  );
}
