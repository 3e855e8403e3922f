import { AsOfLink } from "@/app/_ui/AsOfLink";
import { Notice } from "@/app/_ui/Notice";
import type { ListedDecision } from "@/lib/data/buyDecision";
import { count } from "@/lib/view/number";
import { day } from "@/lib/view/time";

/** What was decided on the family so far, newest first. */
export function DecisionList({ decisions }: { readonly decisions: readonly ListedDecision[] }) {
  if (decisions.length === 0) return null;
  return (
    <Notice kind="info" title="Decided on record">
      <ul>
        {decisions.map(({ id, keptOn, names, quantity, stands }) => (
          <li key={id}>
            <AsOfLink href={`/last-buy/decisions/${id}`}>
              {`${day(keptOn)}: ${count(quantity, "piece")}, by ${names}`}
            </AsOfLink>
            {stands ? "; it stands" : "; a later one took its place"}
          </li>
        ))}
      </ul>
    </Notice>
  );
}
