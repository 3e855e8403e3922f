import { RowTable } from "@/app/_ui/RowTable";
import { money } from "@/lib/view/format";
import { plainNumber, quantity } from "@/lib/view/number";
import type { SiteWorth } from "@/lib/view/poolBoard";

const HEADS = [
  "Site",
  "Owner",
  { text: "On the books, pieces", end: true },
  { text: "Usable, pieces", end: true },
  { text: "On the books, at price", end: true },
  { text: "Usable, at price", end: true },
  { text: "Not priced, pieces", end: true },
];

interface SiteWorthsProps {
  readonly worths: readonly SiteWorth[];
  /** Site name and currency by code. */
  readonly owners: ReadonlyMap<string, { readonly name: string; readonly currency: string }>;
}

/** What lies at each site and what it is worth. */
export function SiteWorths({ worths, owners }: SiteWorthsProps) {
  return (
    <>
      <RowTable caption="What the shelves hold, by site" heads={HEADS}>
        {worths.map((site) => {
          const owner = owners.get(site.siteCode);
          return (
            <tr key={site.siteCode}>
              <th scope="row">{site.siteCode}</th>
              <td>{owner === undefined ? "" : `${owner.name}, books in ${owner.currency}`}</td>
              <td data-align="end">{plainNumber(site.book)}</td>
              <td data-align="end">{quantity(site.usable)}</td>
              <td data-align="end">{money(site.bookEuro)}</td>
              <td data-align="end">{money(site.usableEuro)}</td>
              <td data-align="end">{plainNumber(site.unpriced)}</td>
            </tr>
          );
        })}
      </RowTable>
      <p className="measure mt-2 text-ink-2 text-sm">
        Value = pieces × the price on record, at the budget rate; the price and its day stand in each row of
        the board. Ebbline knows no book values and no other owner than the site whose stock it is. Pieces
        without a price are counted apart and are in no sum of money.
      </p>
    </>
  );
}
