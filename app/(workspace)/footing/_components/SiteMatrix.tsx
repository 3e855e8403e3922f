import { AsOfLink } from "@/app/_ui/AsOfLink";
import { RowTable } from "@/app/_ui/RowTable";
import type { SiteName } from "@/lib/data/siteNames";
import { percent } from "@/lib/view/chance";
import { type FootingRow, shareOf } from "@/lib/view/footing";
import { plainNumber } from "@/lib/view/number";

interface SiteMatrixProps {
  readonly rows: readonly FootingRow[];
  readonly sites: readonly SiteName[];
}

/** How many records have each gap at each site, with their share; a cell opens them. */
export function SiteMatrix({ rows, sites }: SiteMatrixProps) {
  return (
    <RowTable
      caption="Gaps by site"
      heads={["Gap", ...sites.map(({ code }) => ({ text: code, end: true })), { text: "All", end: true }]}
    >
      {rows.map((row) => {
        const at = new Map(row.sites.map((one) => [one.siteId, one]));
        return (
          <tr key={row.key}>
            <th scope="row">{row.title}</th>
            {sites.map(({ id, code }) => {
              const here = at.get(id);
              return (
                <td key={id} data-align="end">
                  {here === undefined || here.missing === 0 ? (
                    <span className="text-ink-2">0</span>
                  ) : (
                    <AsOfLink
                      href={`/footing/${row.key}?site=${encodeURIComponent(code)}`}
                      aria-label={`${row.title} at ${code}: ${here.missing}`}
                    >
                      {plainNumber(here.missing)}
                      <span className="block text-ink-2 text-xs">{percent(shareOf(here))}</span>
                    </AsOfLink>
                  )}
                </td>
              );
            })}
            <td data-align="end">
              {plainNumber(row.missing)}
              <span className="block text-ink-2 text-xs">{percent(shareOf(row))}</span>
            </td>
          </tr>
        );
      })}
    </RowTable>
  );
}
