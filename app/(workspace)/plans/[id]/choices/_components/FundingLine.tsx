import { AsOfLink } from "@/app/_ui/AsOfLink";
import { RowTable } from "@/app/_ui/RowTable";
import { Section } from "@/app/_ui/Section";
import { money } from "@/lib/view/format";
import type { BelowRow, BoardView } from "@/lib/view/planBoard";

const HEADS = [
  { text: "Rank", end: true },
  "Line",
  "As soon as can be",
  { text: "Cost", end: true },
  { text: "Would add", end: true },
  "Would need",
];

interface FundingLineProps {
  readonly view: Pick<BoardView, "years">;
  readonly below: readonly BelowRow[];
}

/** The line the money does not reach past: what is left of each year, and what falls just below. */
export function FundingLine({ view, below }: FundingLineProps) {
  const left = view.years
    .map(({ year, most, spent }) =>
      most === null ? `${year} has no stated budget` : `${money(most - spent)} of ${year}`,
    )
    .join(", ");
  return (
    <Section
      id="funding-line"
      title="Funding line"
      lead={`Left after the reserve: ${left}. Below it stand the first lines by rank that are not planned, with what each would add to the plan as it is now.`}
    >
      {below.length === 0 ? (
        <p className="text-ink-2">Every line that can be planned is.</p>
      ) : (
        <RowTable caption="Just below the funding line" heads={HEADS}>
          {below.map((row) => (
            <Below key={row.lineId} {...row} />
          ))}
        </RowTable>
      )}
    </Section>
  );
}

function Below({ rank, code, way, needs }: BelowRow) {
  return (
    <tr>
      <td data-align="end">{rank}</td>
      <th scope="row">
        <AsOfLink href={`/lines/${code}`} className="row-link">
          {code}
        </AsOfLink>
      </th>
      <td>{way ? way.words : "no way can be finished within the plan"}</td>
      <td data-align="end">{way ? money(way.cost) : ""}</td>
      <td data-align="end">{way ? money(way.addedWorth) : ""}</td>
      <td>
        {way && needs.length === 0 ? "nothing more: it fits" : null}
        {needs.map(({ what, numbers }) => (
          <span key={`${what}${numbers}`} className="block">
            {what}
            {numbers ? <span className="text-ink-2">: {numbers}</span> : null}
          </span>
        ))}
      </td>
    </tr>
  );
}
