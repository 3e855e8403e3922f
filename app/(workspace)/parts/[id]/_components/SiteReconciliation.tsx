import { Derivation } from "@/app/_ui/Derivation";
import { WhereFrom } from "@/app/_ui/WhereFrom";
import { plainNumber, quantity } from "@/lib/view/number";
import type { PartDossier, PartLot } from "@/lib/view/partDossier";
import { deductionReason } from "@/lib/view/partShelf";
import { deductionsOf, lotInDeduction, takenOff } from "@/lib/view/reconcile";

interface SiteReconciliationProps {
  readonly part: PartDossier;
  readonly siteCode: string;
}

function Lots({ lots }: { readonly lots: readonly PartLot[] }) {
  return (
    <ul>
      {lots.map((lot) => (
        <li key={lot.id}>
          {lotInDeduction(lot)}
          <WhereFrom entity="StockLot" id={lot.id} of={lotInDeduction(lot)} />
        </li>
      ))}
    </ul>
  );
}

/** From the book of a site to what is usable there, every deduction opened to its lots. */
export function SiteReconciliation({ part, siteCode }: SiteReconciliationProps) {
  const lots = part.lots.filter((lot) => lot.siteCode === siteCode && lot.quantity !== 0);
  const site = part.stock.find((one) => one.siteCode === siteCode);
  if (!site || lots.length === 0) return null;
  const book = site.book === null ? "not counted" : plainNumber(site.book);
  const usable = site.book === null ? "not known" : quantity(site.usable);
  return (
    <Derivation
      title={`${siteCode}: from ${book} on the book to ${usable} usable`}
      steps={[
        { label: "On the book", value: book, unit: "pieces" },
        ...deductionsOf(lots).map((deduction) => ({
          label: deductionReason(deduction.reason),
          value: takenOff(deduction),
          unit: "pieces",
          source: <Lots lots={deduction.lots} />,
        })),
        { label: "Usable", value: usable, unit: "pieces" },
      ]}
    >
      A piece counts with the chance that it works: by years since it was last powered when usable, by the
      assumptions when unproven or untested, with 0 on hold, reserved, of the wrong revision or beyond repair.
      The chances are common practice, no source, and stand under Assumptions. Whether each lot is really
      there is found by counting it.
    </Derivation>
  );
}
