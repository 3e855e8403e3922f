import { Fragment } from "react";
import { AsOfLink } from "@/app/_ui/AsOfLink";
import { EvidenceMark } from "@/app/_ui/EvidenceMark";
import { RowTable } from "@/app/_ui/RowTable";
import { RowControls } from "@/app/(workspace)/plans/new/_components/RowControls";
import { evidenceMark } from "@/lib/view/evidence";
import { money, moneyRange } from "@/lib/view/format";
import { NOT_KNOWN } from "@/lib/view/number";
import type { CutRow, PlanCut } from "@/lib/view/planCut";
import type { PlanQuery } from "@/lib/view/planQuery";

const HEADS = [
  { text: "Rank", end: true },
  "Line",
  { text: "Stop loss, first year", end: true },
  { text: "Score", end: true },
  { text: "Retrofit cost", end: true },
  { text: "Cumulative cost", end: true },
  "Funded",
  "Pin and cost",
];

/** The ranking with the funding line drawn through it and the next lines below. */
export function CutTable({ cut, query }: { readonly cut: PlanCut; readonly query: PlanQuery }) {
  const lineDrawn = cut.rows.some((row) => row.firstBelow);
  return (
    <div className="mt-6">
      <RowTable caption="Ranked lines and the funding line" heads={HEADS}>
        {cut.rows.map((row) => (
          <Fragment key={row.line.id}>
            {row.firstBelow ? <FundingLine cut={cut} row={row} budget={query.budget ?? 0} /> : null}
            <CutTableRow row={row} />
          </Fragment>
        ))}
        {cut.outcome?.ok === true && !lineDrawn ? (
          <tr>
            <td colSpan={HEADS.length} className="border-ink border-t-4 font-semibold">
              Funding line: the budget pays for every line with a cost that is not pinned out.
            </td>
          </tr>
        ) : null}
      </RowTable>
    </div>
  );
}

interface FundingLineProps {
  readonly cut: PlanCut;
  readonly row: CutRow;
  readonly budget: number;
}

function FundingLine({ cut, row, budget }: FundingLineProps) {
  if (cut.outcome?.ok !== true) return null;
  const { spent, remaining } = cut.outcome.value;
  return (
    <tr data-testid="funding-line">
      <td colSpan={HEADS.length} className="border-ink border-t-4">
        <strong>Funding line</strong> – {money(spent)} of {money(budget)} spent, {money(remaining)} left.{" "}
        {row.line.code} would need {money((row.cost ?? 0) - remaining)} more.
      </td>
    </tr>
  );
}

function CutTableRow({ row }: { readonly row: CutRow }) {
  const { line, place, funded, cumulative } = row;
  return (
    <tr className={funded ? undefined : "text-ink-2"}>
      <td data-align="end">{place ?? NOT_KNOWN}</td>
      <th scope="row">
        <AsOfLink href={`/lines/${line.code}`} className="row-link">
          {line.code}
        </AsOfLink>{" "}
        <span translate="no">{line.name}</span>
        {line.project ? (
          <span className="block text-sm">
            already in project <AsOfLink href={`/projects/${line.project}`}>{line.project}</AsOfLink>
          </span>
        ) : null}
      </th>
      <td data-align="end">
        {money(line.stopLoss?.mean ?? null)}
        {line.stopLoss ? <span className="block text-ink-2 text-sm">{moneyRange(line.stopLoss)}</span> : null}
      </td>
      <td data-align="end">{line.score.toFixed(1)}</td>
      <td data-align="end">
        <CostCell row={row} />
      </td>
      <td data-align="end">{cumulative === null ? "–" : money(cumulative)}</td>
      <td className="whitespace-nowrap">
        {funded ? "● Funded" : "○ Not funded"}
        {row.pin === "none" ? null : <span className="block text-sm">pinned {row.pin}</span>}
      </td>
      <td className="no-print">
        <RowControls code={line.code} pin={row.pin} cost={row.cost} typed={row.typed} />
      </td>
    </tr>
  );
}

function CostCell({ row }: { readonly row: CutRow }) {
  if (row.cost === null) return <span>nothing to replace</span>;
  if (row.typed || row.line.estimate === null) return <>{money(row.cost)} typed</>;
  return (
    <>
      {money(row.cost)} <EvidenceMark {...evidenceMark("assumed")} />
      <span className="block text-ink-2 text-sm">{moneyRange(row.line.estimate)}</span>
    </>
  );
}
