import { AsOfLink } from "@/app/_ui/AsOfLink";
import { RowTable } from "@/app/_ui/RowTable";
import { type OpenNumber, scoreWord } from "@/lib/view/partNumbers";

const HEADS = ["Perhaps", "Maker", "Description", { text: "Speaks for it", end: true }, "Why"];

/** What a number may mean, likeliest first, each with why. */
export function SuggestionTable({ number: { written, suggestions } }: { readonly number: OpenNumber }) {
  if (suggestions.length === 0) return <p className="text-ink-2">No part on record is like it.</p>;
  return (
    <RowTable caption={`What ${written} may mean`} heads={HEADS}>
      {suggestions.map(({ id, number, maker, description, score, why }) => (
        <tr key={id}>
          <th scope="row">
            <AsOfLink href={`/parts/${id}`}>{number}</AsOfLink>
          </th>
          <td>{maker}</td>
          <td>{description}</td>
          <td data-align="end">{scoreWord(score)}</td>
          <td>{why}</td>
        </tr>
      ))}
    </RowTable>
  );
}
