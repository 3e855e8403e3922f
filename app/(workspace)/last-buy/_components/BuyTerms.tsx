import { Notice } from "@/app/_ui/Notice";
import { Section } from "@/app/_ui/Section";
import type { BuyDocument } from "@/lib/view/buyDocument";
import { percent } from "@/lib/view/chance";

/** What was taken for granted, and what to ask before the order is signed. */
export function BuyTerms({ document }: { readonly document: BuyDocument }) {
  const { holdingShare, salvageShare, horizonYears, level } = document.terms;
  const { unpriced, lastBatch } = document;
  return (
    <Section title="Taken for granted">
      <ul className="measure list-disc pl-5">
        <li>
          {`A unit too many costs its price, ${percent(holdingShare)} of it a year for half of ${horizonYears} years, less ${percent(salvageShare)} at the end. Common practice, no source.`}
        </li>
        <li>{`Units without a retrofit date are provided for over ${horizonYears} years.`}</li>
        <li>Parts released by the retrofits themselves are not counted; they come on top.</li>
        {unpriced.length > 0 ? (
          <li>{`No price or no cost of a stop is known for ${unpriced.join(", ")}: bought to a level of ${percent(level)} instead.`}</li>
        ) : null}
      </ul>
      <Notice kind="caution" title="Before anybody signs">
        Last orders can usually not be cancelled or returned: have the supplier confirm terms, dates and the
        hardware revision of the last batch. Newer hardware may need newer controller firmware than the
        machines have. Stored drives need care. This sheet is a draft until a named person signs.
      </Notice>
      <LastBatch rows={lastBatch} />
    </Section>
  );
}

/** Machines the newest hardware would not run on, or may not. */
function LastBatch({ rows }: { readonly rows: BuyDocument["lastBatch"] }) {
  if (rows.length === 0)
    return <p>No rule on record asks more of a controller for newer hardware of these parts.</p>;
  const [rule] = rows;
  const list = (fails: boolean) => rows.filter((row) => row.fails === fails);
  const words = (some: BuyDocument["lastBatch"]) =>
    some
      .map(({ line, machines, model, level }) => `${line} ${machines.join(", ")} (${model}, ${level})`)
      .join(" · ");
  return (
    <Notice kind="caution" title={`The last batch may not run everywhere (${rule?.rule ?? ""})`}>
      {list(true).length > 0 ? <p>{`Does not run on: ${words(list(true))}.`}</p> : null}
      {list(false).length > 0 ? <p>{`Not known for: ${words(list(false))}.`}</p> : null}
    </Notice>
  );
}
