import { AsOfLink } from "@/app/_ui/AsOfLink";
import { RowTable } from "@/app/_ui/RowTable";
import { Section } from "@/app/_ui/Section";
import type { BuyDocument } from "@/lib/view/buyDocument";
import { percent } from "@/lib/view/chance";
import { money } from "@/lib/view/format";
import { plainNumber, significant } from "@/lib/view/number";

const HEADS = [
  "Part",
  { text: "Units", end: true },
  { text: "To leaving", end: true },
  { text: "Unit-years", end: true },
  { text: "Removals a unit-year", end: true },
  { text: "Needed", end: true },
  { text: "Usable now", end: true },
  { text: "One too few", end: true },
  { text: "One too many", end: true },
  { text: "Aimed at", end: true },
  { text: "Buy", end: true },
  { text: "Reached", end: true },
];

/** The case chosen, part by part, with every number its quantity comes from. */
export function BuySteps({ document }: { readonly document: BuyDocument }) {
  const groups = document.cases[0]?.groups ?? [];
  return (
    <Section
      id="steps"
      title="How it is worked out"
      lead="Unit-years to leaving, less what orders and repair make good are the unit-years to provide for. Needed = unit-years × rate. Chance aimed at = one too few ÷ (one too few + one too many). Buy = the fewest that, with what is usable, suffice with that chance (negative binomial of the gamma rate)."
    >
      <RowTable caption="Quantity by part" heads={HEADS}>
        {groups.map((group) => (
          <tr key={group.name}>
            <th scope="row" className="whitespace-nowrap">
              {group.partId === null ? (
                group.name
              ) : (
                <AsOfLink href={`/parts/${group.partId}`}>{group.name}</AsOfLink>
              )}
            </th>
            <td data-align="end">{plainNumber(group.units)}</td>
            <td data-align="end">{plainNumber(group.unitYears, 1)}</td>
            <td data-align="end">{plainNumber(group.exposure, 1)}</td>
            <td
              data-align="end"
              title={`gamma of shape ${significant(group.a, 4)}, weight ${significant(group.b, 5)} unit-years`}
            >
              {significant(group.rate, 3)}
            </td>
            <td data-align="end">{plainNumber(group.demand, 1)}</td>
            <td data-align="end">{plainNumber(group.usable)}</td>
            <td data-align="end">{group.byLevel ? "by level" : money(group.underCost)}</td>
            <td data-align="end">{group.byLevel ? "by level" : money(group.overCost)}</td>
            <td data-align="end">{percent(group.fractile)}</td>
            <td
              data-align="end"
              className="font-semibold"
            >{`${plainNumber(group.quantity)} (${plainNumber(group.low)}–${plainNumber(group.high)})`}</td>
            <td data-align="end">{percent(group.level)}</td>
          </tr>
        ))}
      </RowTable>
    </Section>
  );
}
