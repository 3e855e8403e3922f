import { AsOfLink } from "@/app/_ui/AsOfLink";
import { RowTable } from "@/app/_ui/RowTable";
import { Section } from "@/app/_ui/Section";
import { percent } from "@/lib/view/chance";
import { money } from "@/lib/view/format";
import type { CaseRow, LastBuyInput, LastBuySheet } from "@/lib/view/lastBuySheet";
import { plainNumber, significant } from "@/lib/view/number";

const HEADS = [
  "Part",
  { text: "Unit-years", end: true },
  { text: "Removals per unit-year", end: true },
  { text: "Needed", end: true },
  { text: "Usable now", end: true },
  { text: "One too few", end: true },
  { text: "One too many", end: true },
  { text: "Level aimed at", end: true },
  { text: "Buy", end: true },
  { text: "Level reached", end: true },
];

interface BuyStepsProps {
  readonly input: LastBuyInput;
  readonly sheet: LastBuySheet;
  readonly cases: readonly CaseRow[];
}

/** The first case, part by part, with every number its quantity comes from. */
export function BuySteps({ input, sheet, cases }: BuyStepsProps) {
  const numbers = new Map(input.parts.map(({ id, number }) => [id, number]));
  const groups = cases[0]?.buy.groups ?? [];
  const unpriced = new Set(sheet.unpriced);
  const euros = (partId: string, amount: number) =>
    unpriced.has(numbers.get(partId) ?? "") ? "by level" : money(amount);
  return (
    <Section
      id="steps"
      title="How it is worked out"
      lead="Needed = unit-years × rate. Level aimed at = one too few ÷ (one too few + one too many). Buy = the fewest that, with what is usable, suffice with that chance (negative binomial of the gamma rate)."
    >
      <RowTable caption="Quantity by part" heads={HEADS}>
        {groups.map((group) => {
          const partId = group.partIds[0] ?? "";
          return (
            <tr key={partId}>
              <th scope="row">
                <AsOfLink href={`/parts/${partId}`}>{numbers.get(partId) ?? partId}</AsOfLink>
              </th>
              <td data-align="end">{plainNumber(group.exposure, 1)}</td>
              <td data-align="end">{significant(group.rate.a / group.rate.b, 3)}</td>
              <td data-align="end">{plainNumber(group.demand, 1)}</td>
              <td data-align="end">{plainNumber(group.usable)}</td>
              <td data-align="end">{euros(partId, group.underCost)}</td>
              <td data-align="end">{euros(partId, group.overCost)}</td>
              <td data-align="end">{percent(group.fractile)}</td>
              <td
                data-align="end"
                className="font-semibold"
              >{`${plainNumber(group.quantity)} (${plainNumber(group.low)}–${plainNumber(group.high)})`}</td>
              <td data-align="end">{percent(group.level)}</td>
            </tr>
          );
        })}
      </RowTable>
    </Section>
  );
}
