import { SpanBar } from "@/app/_ui/SpanBar";
import { chance } from "@/lib/view/chance";
import type { LineDossier } from "@/lib/view/lineDossier";
import { checkReason, checkWords, oddsSentence, type PlaceNeighbour, placeRange } from "@/lib/view/linePlace";

/** How sure the line's place by loss is, against whom, and what would settle it. */
export function Place({ line }: { readonly line: LineDossier }) {
  const { code, place, groupLines, rankByLoss } = line;
  if (place === null || rankByLoss === null)
    return <p>No cost per hour is recorded, so the line has no place by money. Next: Finance states one.</p>;
  const { span, firstFive, draws, seed } = place;
  const range = placeRange(span);
  return (
    <>
      <p className="measure">
        By its mean loss {code} is at place {rankByLoss} of {groupLines}. In nine of ten draws it is at{" "}
        {span.low === span.high ? `place ${range}` : `places ${range}`}, in half of them at place {span.mid}
        {span.mid === 1 ? "" : " or better"}. Among the first five: {chance(firstFive, "draws")}.
      </p>
      <div className="my-2 max-w-60">
        <SpanBar
          {...{ low: span.low, mean: span.mid, high: span.high, min: 1, max: groupLines }}
          text={`places ${range} of ${groupLines}, median ${span.mid}`}
          assumed={place.fragile}
        />
      </div>
      <ul className="list-disc pl-5" aria-label="Against its neighbours">
        {place.neighbours.map((one, i) => (
          <li key={one.code ?? `${one.side} ${i}`}>
            {oddsSentence(code, nameOf(one), one.before)}
            {one.place === null ? "" : ` ${one.code} is at place ${one.place}.`}
          </li>
        ))}
      </ul>
      <Checks code={code} place={place} />
      <p className="measure mt-2 text-ink-2">
        {draws} draws, seed {seed}; all lines share the draws of what they share.
      </p>
    </>
  );
}

function nameOf({ code, side }: PlaceNeighbour): string {
  return code ?? `a line of another site just ${side}`;
}

function Checks({
  code,
  place,
}: {
  readonly code: string;
  readonly place: NonNullable<LineDossier["place"]>;
}) {
  if (place.checks.length === 0)
    return (
      <p className="measure mt-2">
        Nothing single is left to find out: its cost is confirmed, its stock counted.
      </p>
    );
  return (
    <>
      {place.fragile ? (
        <p className="measure mt-2">
          <strong>Fragile:</strong> one unknown alone moves it by {place.checks[0]?.places} places.
        </p>
      ) : null}
      <ol className="mt-1 list-decimal pl-5" aria-label="What would settle it">
        {place.checks.map((check) => (
          <li key={checkWords(code, check)}>
            {checkWords(code, check)}. <span className="text-ink-2">{checkReason(check)}</span>
          </li>
        ))}
      </ol>
    </>
  );
}
