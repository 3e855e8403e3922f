import { RowTable } from "@/app/_ui/RowTable";
import { Section } from "@/app/_ui/Section";
import type { KeptReplan } from "@/lib/view/schedule";
import { day, dayRange } from "@/lib/view/time";

/** Every plan that was in force, newest first, with its reason and what it moved. */
export function Replans({ replans }: { readonly replans: readonly KeptReplan[] }) {
  if (replans.length === 0) return null;
  return (
    <Section
      title="Plans kept"
      lead="The first is the baseline. Each later one says why it took the place of the one before."
    >
      <RowTable caption="Plans kept" heads={["Plan", "Day", "By", "Why", "What it moved"]}>
        {replans.map((plan) => (
          <tr key={plan.number}>
            <th scope="row">{plan.number}</th>
            <td className="whitespace-nowrap">{day(plan.madeOn)}</td>
            <td>{plan.madeBy}</td>
            <td>{plan.reason}</td>
            <td>
              <Moved plan={plan} />
            </td>
          </tr>
        ))}
      </RowTable>
    </Section>
  );
}

/** The tasks the plan put elsewhere, before and after. */
function Moved({ plan: { number, before, after } }: { readonly plan: KeptReplan }) {
  if (number === 1) return <>the baseline</>;
  const former = new Map(before.map((row) => [row.code, row]));
  const moved = after.filter(({ code, start, finish }) => {
    const was = former.get(code);
    return was?.start !== start || was?.finish !== finish;
  });
  if (moved.length === 0) return <>nothing</>;
  const words = (row: { start: string | null; finish: string | null } | undefined) =>
    row?.start && row.finish ? dayRange(row.start, row.finish) : "not planned";
  return (
    <details className="disclosure">
      <summary>{`${moved.length} ${moved.length === 1 ? "task" : "tasks"}`}</summary>
      <ul>
        {moved.map((row) => (
          <li key={row.code}>{`${row.code} ${row.name}: ${words(former.get(row.code))} → ${words(row)}`}</li>
        ))}
      </ul>
    </details>
  );
}
