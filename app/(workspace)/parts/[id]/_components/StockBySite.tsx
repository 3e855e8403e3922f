import { Fold } from "@/app/_ui/Fold";
import { Quarantine } from "@/app/(workspace)/parts/[id]/_components/Quarantine";
import { SiteReconciliation } from "@/app/(workspace)/parts/[id]/_components/SiteReconciliation";
import { count, plainNumber, quantity } from "@/lib/view/number";
import type { PartDossier } from "@/lib/view/partDossier";
import { partFolds } from "@/lib/view/partFolds";
import { deductionText } from "@/lib/view/partShelf";

/** Book against usable at each site, every deduction named. */
export function StockBySite({ part }: { readonly part: PartDossier }) {
  return (
    <Fold
      page="part"
      title="Book against usable"
      id="stock"
      figure={partFolds.book(part)}
      lead="Usable is the number of pieces expected to work when needed: each by its state and the years since it was last powered. Earlier states of a bin stand in its history."
    >
      {part.stock.length === 0 ? (
        <p>No stock is recorded{part.elsewhere === null ? "" : " at your sites"}.</p>
      ) : (
        <div className="table-frame">
          <table className="table">
            <caption className="sr-only">Book against usable stock by site</caption>
            <thead>
              <tr>
                <th scope="col" className="label">
                  Site
                </th>
                <th scope="col" className="label" data-align="end">
                  Book <span className="unit block">pieces</span>
                </th>
                <th scope="col" className="label">
                  Taken off
                </th>
                <th scope="col" className="label" data-align="end">
                  Usable <span className="unit block">pieces</span>
                </th>
              </tr>
            </thead>
            <tbody>
              {part.stock.map((site) => (
                <tr key={site.siteCode}>
                  <th scope="row">
                    {site.siteCode} <span className="text-ink-2">{site.siteName}</span>
                  </th>
                  <td data-align="end">{site.book === null ? "not counted" : plainNumber(site.book)}</td>
                  <td>{site.deductions.map(deductionText).join(", ") || "nothing"}</td>
                  <td data-align="end" className="font-semibold">
                    {site.book === null ? "not known" : quantity(site.usable)}
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
      {part.stock.map(({ siteCode }) => (
        <SiteReconciliation key={siteCode} part={part} siteCode={siteCode} />
      ))}
      <Quarantine lots={part.lots.filter(({ mayChange, quantity: pieces }) => mayChange && pieces)} />
      {part.elsewhere === null ? null : (
        <p className="mt-2">
          At other sites: {count(part.elsewhere.book, "piece")} on the books,{" "}
          {quantity(part.elsewhere.usable)} usable.
        </p>
      )}
    </Fold>
  );
}
