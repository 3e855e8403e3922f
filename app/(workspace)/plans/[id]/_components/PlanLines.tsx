import { AsOfLink } from "@/app/_ui/AsOfLink";
import { RowTable } from "@/app/_ui/RowTable";
import { Section } from "@/app/_ui/Section";
import { StartProject } from "@/app/(workspace)/plans/[id]/_components/StartProject";
import { money } from "@/lib/view/format";
import type { PlanPage, PlanRow } from "@/lib/view/plan";

const HEADS = [
  { text: "Rank", end: true },
  "Line",
  { text: "Stop loss, first year", end: true },
  { text: "Score", end: true },
  { text: "Retrofit cost", end: true },
  "Project",
];

interface PlanLinesProps {
  readonly plan: PlanPage;
  /** Ids of the lines a project may be started from by the person. */
  readonly startable: readonly string[];
}

/** The funded lines of a plan, then those below its funding line. */
export function PlanLines({ plan, startable }: PlanLinesProps) {
  const groups = [
    { title: "Funded", rows: plan.rows.filter((row) => row.funded) },
    { title: "Below the funding line", rows: plan.rows.filter((row) => !row.funded) },
  ];
  return groups.map(({ title, rows }) => (
    <Section key={title} title={title}>
      {rows.length === 0 ? (
        <p className="text-ink-2">None.</p>
      ) : (
        <RowTable caption={title} heads={HEADS}>
          {rows.map((row) => (
            <PlanLineRow key={row.id} row={row} startable={startable.includes(row.id)} />
          ))}
        </RowTable>
      )}
    </Section>
  ));
}

function PlanLineRow({ row, startable }: { readonly row: PlanRow; readonly startable: boolean }) {
  return (
    <tr>
      <td data-align="end">{row.rank}</td>
      <th scope="row">
        <AsOfLink href={`/lines/${row.code}`} className="row-link">
          {row.code}
        </AsOfLink>{" "}
        {row.name}
        {row.pin === "none" ? null : <span className="text-ink-2 text-sm"> – pinned {row.pin}</span>}
      </th>
      <td data-align="end">{money(row.stopLoss)}</td>
      <td data-align="end">{row.score.toFixed(1)}</td>
      <td data-align="end">{money(row.cost)}</td>
      <td>
        {row.project ? <AsOfLink href={`/projects/${row.project}`}>{row.project}</AsOfLink> : null}
        {row.project === null && startable ? <StartProject planLineId={row.id} code={row.code} /> : null}
        {row.project === null && !startable ? <span className="text-ink-2">none</span> : null}
      </td>
    </tr>
  );
}
