import { count, quantity } from "@/lib/view/number";
import { COUNT_MONTHS, type ReviewFigures, transferWay } from "@/lib/view/review";
import { REVIEW_TOPICS, type ReviewRecord } from "@/lib/view/reviewRecord";
import { day } from "@/lib/view/time";

const MOST_NAMED = 8;

/** What hangs on the shelf, in sentences, and the minutes. */
export function SheetRest({ record: { figures, notes } }: { readonly record: ReviewRecord }) {
  const written = REVIEW_TOPICS.filter(({ topic }) => notes[topic].text.trim() !== "");
  return (
    <>
      <section>
        <h2 className="font-semibold">Repairs, holds, transfers and counts</h2>
        <ul className="list-disc pl-5">
          {shelfSentences(figures).map((text) => (
            <li key={text}>{text}</li>
          ))}
        </ul>
      </section>
      <section>
        <h2 className="font-semibold">Minutes</h2>
        {written.length === 0 ? <p>Nothing was written.</p> : null}
        <div className="review-minutes">
          {written.map(({ topic, label }) => (
            <div key={topic}>
              <p className="label">{label}</p>
              <p className="review-text">{notes[topic].text}</p>
            </div>
          ))}
        </div>
      </section>
    </>
  );
}

function shelfSentences({ repairs, holds, transfers, uncounted }: ReviewFigures): string[] {
  return [
    `${count(repairs.length, "repair")} overdue${named(repairs.map(({ number, reference, dueOn }) => `${number} ${reference}, due ${day(dueOn)}`))}.`,
    `${count(holds.length, "lot")} on hold${named(holds.map(({ number, bin, quantity: pieces }) => `${number} in ${bin}, ${pieces === null ? "not counted" : quantity(pieces)}`))}.`,
    `${count(transfers.length, "transfer")} proposed${named(transfers.map(({ number, pieces, way }) => `${quantity(pieces)} ${number} ${transferWay(way)}`))}.`,
    `${count(uncounted.lots, "lot")} of ${uncounted.of} not counted for ${COUNT_MONTHS} months.`,
  ];
}

function named(things: readonly string[]): string {
  if (things.length === 0) return "";
  const more = things.length - MOST_NAMED;
  return `: ${things.slice(0, MOST_NAMED).join("; ")}${more > 0 ? `; and ${more} more` : ""}`;
}
