import { KeyFigure } from "@/app/_ui/KeyFigure";
import { KeyFigures } from "@/app/_ui/KeyFigures";
import { RowTable } from "@/app/_ui/RowTable";
import { Section } from "@/app/_ui/Section";
import { money, thousands } from "@/lib/view/format";
import { count } from "@/lib/view/number";
import { cashByQuarter, cashTotals, type PaidQuarter } from "@/lib/view/projectCash";
import type { ListedProject } from "@/lib/view/projectList";
import { day } from "@/lib/view/time";

interface FinanceProps {
  readonly projects: readonly ListedProject[];
  readonly paid: readonly PaidQuarter[];
  readonly asOf: string;
}

const HEADS = ["Quarter", { text: "Paid, k€", end: true }, { text: "Still to be paid, k€", end: true }];

/** Forecast against budget and the money by quarter, over all projects shown, in euros at the budget rates. */
export function Finance({ projects, paid, asOf }: FinanceProps) {
  const { budget, open, end, unrated, projects: rated, paid: spent } = cashTotals(projects);
  const quarters = cashByQuarter(projects, paid, asOf);
  return (
    <Section
      title="Money of all projects"
      lead={`${count(rated, "project")} in euros at the budget rates. In the end: what each lead states, else the trend, else the budget; of projects closed or parked, what is paid. The rest is spread evenly from ${day(asOf)} to each planned end: an assumption, not a payment plan.`}
    >
      <KeyFigures>
        <KeyFigure label="Budget" value={money(budget)} />
        <KeyFigure label="Paid" value={money(spent)} span={`and ${money(open)} ordered and not yet paid`} />
        <KeyFigure
          label="In the end"
          value={money(end)}
          span={`${money(Math.abs(end - budget))} ${end > budget ? "above" : "below"} the budget`}
          assumed
        />
      </KeyFigures>
      {unrated.length > 0 ? (
        <p className="measure">{`Not in the sums, for want of a budget rate: ${unrated.join(", ")}.`}</p>
      ) : null}
      <RowTable caption="Money by quarter" heads={HEADS}>
        {quarters.map(({ label, paid: gone, expected }) => (
          <tr key={label}>
            <th scope="row">{label}</th>
            <td data-align="end">{gone === 0 ? "–" : thousands(gone)}</td>
            <td data-align="end">{expected === 0 ? "–" : thousands(expected)}</td>
          </tr>
        ))}
      </RowTable>
    </Section>
  );
}
