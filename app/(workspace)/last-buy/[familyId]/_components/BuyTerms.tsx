import { Notice } from "@/app/_ui/Notice";
import { Section } from "@/app/_ui/Section";
import { percent } from "@/lib/view/chance";
import { BUY_TERMS, type LastBuySheet } from "@/lib/view/lastBuySheet";

/** What was taken for granted, and what to ask before the order is signed. */
export function BuyTerms({ sheet }: { readonly sheet: LastBuySheet }) {
  const { holdingShare, salvageShare, horizonYears, level } = BUY_TERMS;
  return (
    <Section title="Taken for granted">
      <ul className="measure list-disc pl-5">
        <li>
          {`A unit too many costs its price, ${percent(holdingShare)} of it a year for half of ${horizonYears} years, less ${percent(salvageShare)} at the end. Common practice, no source.`}
        </li>
        <li>{`Units without a retrofit date are provided for over ${horizonYears} years.`}</li>
        <li>Parts released by the retrofits themselves are not counted; they come on top.</li>
        {sheet.unpriced.length > 0 ? (
          <li>{`No price or no cost of a stop is known for ${sheet.unpriced.join(", ")}: bought to a level of ${percent(level)} instead.`}</li>
        ) : null}
      </ul>
      <Notice kind="caution" title="Before anybody signs">
        Last orders can usually not be cancelled or returned: have the supplier confirm terms, dates and the
        hardware revision of the last batch. Newer hardware may need newer controller firmware than the
        machines have. Stored drives need care. This sheet is a draft until a named person signs.
      </Notice>
    </Section>
  );
}
