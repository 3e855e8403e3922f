import { AsOfLink } from "@/app/_ui/AsOfLink";
import { RowTable } from "@/app/_ui/RowTable";
import { SaveLinks } from "@/app/_ui/SaveLinks";
import { StageBadge } from "@/app/_ui/StageBadge";
import { money } from "@/lib/view/format";
import { plainNumber } from "@/lib/view/number";
import type { SpendSum } from "@/lib/view/spend";
import { stageBadge } from "@/lib/view/stage";

const HEADS = [
  "Part",
  "Supply stage",
  "For the shelf of",
  { text: "Pieces", end: true },
  { text: "Cost", end: true },
  { text: "Avoids", end: true },
];

interface SpendSumsProps {
  readonly sums: readonly SpendSum[];
}

/** The pieces put together by part and site, as they would be ordered. */
export function SpendSums({ sums }: SpendSumsProps) {
  return (
    <>
      <RowTable caption="Pieces to order by part and site" heads={HEADS}>
        {sums.map((sum) => (
          <tr key={`${sum.partId} ${sum.siteCode}`}>
            <th scope="row">
              <AsOfLink href={`/parts/${sum.partId}`}>{sum.number}</AsOfLink>
              <span className="block font-normal text-ink-2 text-sm">{sum.maker}</span>
            </th>
            <td>
              <StageBadge {...stageBadge(sum.stage)} />
            </td>
            <td>{sum.siteCode}</td>
            <td data-align="end">{plainNumber(sum.pieces)}</td>
            <td data-align="end">{money(sum.cost)}</td>
            <td data-align="end">{money(sum.avoids)}</td>
          </tr>
        ))}
      </RowTable>
      <p className="no-print mt-2 flex flex-wrap items-center gap-x-4">
        Pieces as a file
        <SaveLinks name="spend" title="Pieces" />
      </p>
    </>
  );
}
