import { AsOfLink } from "@/app/_ui/AsOfLink";
import { drawnWords, fragileLines, rankCertainty } from "@/lib/view/lineCertainty";
import { checkRange, checkWords } from "@/lib/view/linePlace";
import { isWholeGroup, type Ranking } from "@/lib/view/lineRanking";

/** Which ranks are solid, which are a tie, and what would settle those one unknown alone moves far. */
export function Certainty({ ranking }: { readonly ranking: Ranking }) {
  const certainty = rankCertainty(ranking.lines, isWholeGroup(ranking));
  if (certainty === null) return <p>No line has a cost per hour yet, so there is no rank by money.</p>;
  const fragile = fragileLines(ranking.lines);
  return (
    <>
      <p className="measure">{certainty}</p>
      {fragile.length === 0 ? (
        <p className="measure mt-2">No single unknown moves a line by five places or more.</p>
      ) : (
        <>
          <p className="measure mt-2">
            One unknown alone moves these by five places or more. Next, the dearest line first:
          </p>
          <ul className="mt-1 list-disc pl-5" aria-label="What would settle places">
            {fragile.map(({ id, code, place }) => {
              const [check] = place.checks;
              return check ? (
                <li key={id}>
                  <AsOfLink href={`/lines/${code}#place`}>{code}</AsOfLink>, places {checkRange(check)} by
                  what is found: {checkWords(code, check)}.
                </li>
              ) : null;
            })}
          </ul>
        </>
      )}
      <p className="measure mt-2 text-ink-2">
        {drawnWords(ranking.lines)}. Drawn each time: rates, hours to restore, cost per hour by its evidence,
        working spares, whether undated parts can be ordered, unread parts. The spread of a cost by evidence
        is common practice, no source.
      </p>
    </>
  );
}
