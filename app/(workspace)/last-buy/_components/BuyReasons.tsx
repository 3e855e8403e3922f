import { Section } from "@/app/_ui/Section";
import type { BuyDocument } from "@/lib/view/buyDocument";
import { percent } from "@/lib/view/chance";
import { plainNumber } from "@/lib/view/number";

/** What the quantity rests on, in the few numbers a sceptic asks for first. */
export function BuyReasons({ document }: { readonly document: BuyDocument }) {
  const [base] = document.cases;
  if (!base) return null;
  const { plannedShare, choice, terms, units } = document;
  const levels = base.groups.map(({ fractile }) => fractile);
  const [least, most] = [Math.min(...levels), Math.max(...levels)];
  const supposed = Object.keys(choice.planYears).length;
  const years = units === 0 ? 0 : base.unitYears / units;
  return (
    <Section title="Why this many" id="reasons">
      <ul className="measure list-disc pl-5">
        <li>
          {`${plainNumber(base.unitYears)} unit-years until the units leave: ${plainNumber(units)} units, ${plainNumber(years, 1)} years each on average. ${percent(plannedShare)} of them have a retrofit day${supposed > 0 ? `, supposed for ${supposed} lines on this sheet` : ""}; the rest are provided for over ${plainNumber(terms.horizonYears + choice.slipYears)} years.`}
        </li>
        <li>
          {`${plainNumber(base.exposure)} of these are made good by nothing: orders serve until the last order, ${base.repaired ? "repair brings a share back while it is open" : "repair is taken to stop at once"}.`}
        </li>
        <li>{`${plainNumber(base.demand, 1)} units are needed on average; ${plainNumber(base.groups.reduce((sum, { usable }) => sum + usable, 0))} are usable now.`}</li>
        <li>
          {choice.level === null
            ? `The level of service follows the costs: ${least === most ? percent(least) : `${percent(least)} to ${percent(most)}`}. A dear stop asks for more, a dear part for less.`
            : `The level of service is set to ${percent(choice.level)} for every part, whatever it costs.`}
        </li>
      </ul>
    </Section>
  );
}
