"use client";

import { useMemo, useState } from "react";
import { LinkButton } from "@/app/_ui/LinkButton";
import { BuyCases } from "@/app/(workspace)/last-buy/_components/BuyCases";
import { BuyHead } from "@/app/(workspace)/last-buy/_components/BuyHead";
import { BuyReasons } from "@/app/(workspace)/last-buy/_components/BuyReasons";
import { BuySteps } from "@/app/(workspace)/last-buy/_components/BuySteps";
import { BuyTerms } from "@/app/(workspace)/last-buy/_components/BuyTerms";
import { BuyChoices } from "@/app/(workspace)/last-buy/[familyId]/_components/BuyChoices";
import { KeepDecision } from "@/app/(workspace)/last-buy/[familyId]/_components/KeepDecision";
import { FIRST_CHOICE } from "@/lib/schema/buyDecision";
import { buyDocument, type LastBatchRow } from "@/lib/view/buyDocument";
import type { BuyBasis } from "@/lib/view/lastBuyBasis";

interface BuySheetViewProps {
  readonly basis: BuyBasis;
  readonly lastBatch: readonly LastBatchRow[];
  /** The decision that stands; null is none. */
  readonly standing: string | null;
  readonly mayDecide: boolean;
}

/** The sheet, worked out again at once for whatever is chosen or supposed. */
export function BuySheetView({ basis, lastBatch, standing, mayDecide }: BuySheetViewProps) {
  const [choice, setChoice] = useState(FIRST_CHOICE);
  const document = useMemo(() => buyDocument(basis, choice, lastBatch), [basis, choice, lastBatch]);
  const file = (format: string) =>
    `/api/last-buy?family=${basis.family.id}&asOf=${basis.asOf}&format=${format}&choice=${encodeURIComponent(JSON.stringify(choice))}`;
  return (
    <>
      <BuyChoices basis={basis} choice={choice} change={setChoice} />
      <BuyHead document={document} />
      <BuyReasons document={document} />
      <BuyCases document={document} />
      <BuySteps document={document} />
      <p className="no-print mt-2 flex flex-wrap gap-2">
        <LinkButton href={file("xlsx")} download>
          Every step as XLSX
        </LinkButton>
        <LinkButton href={file("csv")} download>
          Every step as CSV
        </LinkButton>
      </p>
      <BuyTerms document={document} />
      {mayDecide ? <KeepDecision document={document} standing={standing} /> : null}
    </>
  );
}
