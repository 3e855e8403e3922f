import { AsOfLink } from "@/app/_ui/AsOfLink";
import { RowTable } from "@/app/_ui/RowTable";
import { Section } from "@/app/_ui/Section";
import { spentSpan } from "@/lib/view/boardWords";
import { money, moneyRange } from "@/lib/view/format";
import { type ComparedPlan, comparedLines } from "@/lib/view/planComparison";
import { day } from "@/lib/view/time";

interface FigureRow {
  readonly name: string;
  readonly of: (plan: ComparedPlan) => string;
  readonly worse?: (plan: ComparedPlan) => boolean;
}

function figureRows(plans: readonly ComparedPlan[]): FigureRow[] {
  const years = [...new Set(plans.flatMap(({ view }) => view.years.map(({ year }) => year)))].sort();
  const yearOf = ({ view }: ComparedPlan, year: number) => view.years.find((one) => one.year === year);
  const isOver = (plan: ComparedPlan, year: number) => {
    const one = yearOf(plan, year);
    return one?.most != null && one.spent > one.most;
  };
  return [
    { name: "Stands", of: ({ state, view }) => `${state}, data of ${day(view.asOf)}` },
    { name: "Less loss by the plan", of: ({ view }) => money(view.worth.worth) },
    { name: "After the money spent", of: ({ view }) => money(view.worth.worth - view.worth.spentDiscounted) },
    { name: "Loss of the group with it", of: ({ view }) => money(view.worth.lossWith) },
    { name: "Spent, typical", of: ({ view }) => money(view.worth.spent) },
    { name: "Spent, low to high", of: ({ view }) => moneyRange(spentSpan(view)) },
    ...years.map((year) => ({
      name: `Spent ${year}`,
      of: (plan: ComparedPlan) => {
        const one = yearOf(plan, year);
        return one
          ? `${money(one.spent)} of ${one.most === null ? "no stated budget" : money(one.most)}`
          : "–";
      },
      worse: (plan: ComparedPlan) => isOver(plan, year),
    })),
    {
      name: "Lines treated",
      of: ({ view }) => String(view.lines.filter(({ placed }) => placed.length > 0).length),
    },
    {
      name: "Limits broken",
      of: ({ view }) => String(view.broken.length),
      worse: ({ view }) => view.broken.length > 0,
    },
  ];
}

/** Plans side by side: their figures, then what each does to each line. */
export function Comparison({ plans }: { readonly plans: readonly ComparedPlan[] }) {
  const heads = plans.map(({ name }) => ({ text: name }));
  return (
    <>
      <RowTable caption="Figures of the plans" heads={["Figure", ...heads]}>
        {figureRows(plans).map(({ name, of, worse }) => (
          <tr key={name}>
            <th scope="row">{name}</th>
            {plans.map((plan) => (
              <td key={plan.name} className={worse?.(plan) ? "font-semibold" : ""}>
                {worse?.(plan) ? "▲ " : ""}
                {of(plan)}
              </td>
            ))}
          </tr>
        ))}
        <tr>
          <th scope="row">Open it</th>
          {plans.map(({ id, name }) => (
            <td key={name}>{id ? <AsOfLink href={`/plans/${id}`}>Board</AsOfLink> : "nobody keeps it"}</td>
          ))}
        </tr>
      </RowTable>
      <Section title="Line by line" lead="What each plan does; a mark stands where they differ.">
        <RowTable caption="Lines in the plans" heads={["Line", ...heads]}>
          {comparedLines(plans).map(({ code, name, does, differs }) => (
            <tr key={code}>
              <th scope="row">
                {differs ? <span title="The plans differ">◆ </span> : null}
                {code} {name}
              </th>
              {plans.map((plan, i) => (
                <td key={plan.name} className={does[i] ? "" : "text-ink-2"}>
                  {does[i] || "nothing"}
                </td>
              ))}
            </tr>
          ))}
        </RowTable>
      </Section>
    </>
  );
}
