import { AsOfLink } from "@/app/_ui/AsOfLink";
import { RowTable } from "@/app/_ui/RowTable";
import type { ReleasedPart } from "@/lib/retrofit/scope/releasedParts";
import { normWords } from "@/lib/view/lineScope";
import { plainNumber } from "@/lib/view/number";

const HEADS = ["Part", { text: "Taken out", end: true }, { text: "Expected to pass a test", end: true }];

/** The drives a conversion sets free; none of them counts as a spare before its test. */
export function ReleasedTable({ released }: { readonly released: readonly ReleasedPart[] }) {
  return (
    <RowTable caption="Drives set free" heads={HEADS}>
      {released.map(({ part, units, usable }) => (
        <tr key={part?.id ?? "not identified"}>
          <th scope="row">
            {part === null ? "not identified" : <AsOfLink href={`/parts/${part.id}`}>{part.number}</AsOfLink>}
          </th>
          <td data-align="end">{plainNumber(units)}</td>
          <td data-align="end">{normWords(usable, 1)}</td>
        </tr>
      ))}
    </RowTable>
  );
}
