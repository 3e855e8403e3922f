import { Delta } from "@/app/_ui/Delta";
import { RowTable } from "@/app/_ui/RowTable";
import { Section } from "@/app/_ui/Section";
import { type CutoverPlan, type CutoverStanding, compareSteps, span } from "@/lib/view/cutover";

const HEADS = [
  "Step",
  { text: "Planned", end: true },
  { text: "Took", end: true },
  { text: "Over after the plan", end: true },
] as const;

interface ComparedProps {
  readonly plan: CutoverPlan;
  readonly standing: CutoverStanding;
}

/** Planned against actual, once something is over: the hours for the next cutover come from here. */
export function Compared({ plan, standing }: ComparedProps) {
  const rows = compareSteps(plan, standing).filter(({ actualHours }) => actualHours !== null);
  if (rows.length === 0) return null;
  return (
    <Section title="Planned against actual" id="compared">
      <RowTable caption="Planned against actual" heads={HEADS}>
        {rows.map(({ id, title, plannedHours, actualHours, lateHours }) => (
          <tr key={id}>
            <th scope="row">{title}</th>
            <td data-align="end">{span(plannedHours)}</td>
            <td data-align="end">{span(actualHours ?? 0)}</td>
            <td data-align="end">
              <Late hours={lateHours ?? 0} />
            </td>
          </tr>
        ))}
      </RowTable>
    </Section>
  );
}

function Late({ hours }: { readonly hours: number }) {
  if (Math.abs(hours) < 1 / 60) return <Delta kind="same" text="on time" />;
  return hours > 0 ? (
    <Delta kind="worse" text={`${span(hours)} later`} />
  ) : (
    <Delta kind="better" text={`${span(hours)} earlier`} />
  );
}
