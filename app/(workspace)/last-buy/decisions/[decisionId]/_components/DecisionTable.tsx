import { RowTable } from "@/app/_ui/RowTable";
import { Section } from "@/app/_ui/Section";
import type { DecisionSheet } from "@/lib/view/buyDecision";
import { plainNumber } from "@/lib/view/number";

const HEADS = ["Part", "Shelf", { text: "Decided", end: true }, { text: "Sheet's own split", end: true }];

/** Pieces by part and shelf, as decided, beside what the sheet proposed. */
export function DecisionTable({ sheet: { rows } }: { readonly sheet: DecisionSheet }) {
  const shown = rows.filter(({ quantity, proposed }) => quantity > 0 || proposed > 0);
  return (
    <Section title="What to buy, and for which shelf">
      {shown.length === 0 ? (
        <p>Nothing is bought.</p>
      ) : (
        <RowTable caption="Pieces by part and shelf" heads={HEADS}>
          {shown.map(({ partId, siteId, number, site, quantity, proposed }) => (
            <tr key={`${partId} ${siteId}`}>
              <th scope="row">{number}</th>
              <td>{site}</td>
              <td data-align="end" className="font-semibold">
                {plainNumber(quantity)}
              </td>
              <td data-align="end">{plainNumber(proposed)}</td>
            </tr>
          ))}
        </RowTable>
      )}
      <p className="mt-10 hidden print:block">Date, names and signatures: ______________________________</p>
    </Section>
  );
}
