import { type Head, RowTable } from "@/app/_ui/RowTable";
import { ShareBars } from "@/app/(workspace)/pool/_components/ShareBars";
import { percent } from "@/lib/view/chance";
import { money } from "@/lib/view/format";
import { plainNumber, quantity, significant } from "@/lib/view/number";
import type { PoolOfPart, PoolSiteRow } from "@/lib/view/poolMoves";

const HEADS: readonly Head[] = [
  "Site",
  "Pieces over demand",
  { text: "Usable of book", end: true },
  { text: "Units", end: true },
  { text: "Index", end: true },
  { text: "Own chance now", end: true },
  { text: "After all moves", end: true },
  { text: "Stops a year", end: true },
];

const WAY_LOSS: Head = { text: "Way loss, a year", end: true };

function indexText({ index, hoards }: PoolSiteRow): string {
  if (index === null) return hoards ? "H no demand" : "none";
  return `${hoards ? "H " : ""}${significant(index, 2)}`;
}

interface SharesTableProps {
  readonly pool: PoolOfPart;
  readonly showsAmounts: boolean;
}

/** Every site of the pool: its share, and how long its own shelf alone would do. */
export function SharesTable({ pool, showsAmounts }: SharesTableProps) {
  return (
    <RowTable caption="Shares and own shelves by site" heads={showsAmounts ? [...HEADS, WAY_LOSS] : HEADS}>
      {pool.sites.map((site) => (
        <tr key={site.siteId}>
          <th scope="row">
            {site.siteCode} <span className="block font-normal text-ink-2 text-sm">{site.siteName}</span>
          </th>
          <td>
            <ShareBars
              {...site}
              text={`${percent(site.ofSpares)} of the usable pieces, ${percent(site.ofDemand)} of the demand`}
            />
          </td>
          <td data-align="end">{`${quantity(site.usable)} of ${plainNumber(site.onBooks)}`}</td>
          <td data-align="end">{plainNumber(site.units)}</td>
          <td data-align="end" className={site.hoards ? "font-semibold" : undefined}>
            {indexText(site)}
          </td>
          <td data-align="end">{site.units === 0 ? "no demand" : percent(site.before)}</td>
          <td data-align="end">{site.units === 0 ? "no demand" : percent(site.after)}</td>
          <td data-align="end">{significant(site.stops, 2)}</td>
          {showsAmounts ? <td data-align="end">{money(site.wayLoss)}</td> : null}
        </tr>
      ))}
    </RowTable>
  );
}
