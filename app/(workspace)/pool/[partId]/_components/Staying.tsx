import { RowTable } from "@/app/_ui/RowTable";
import { plainNumber } from "@/lib/view/number";
import type { StayingLot } from "@/lib/view/poolMoves";

const HEADS = ["Site", "Bin", "Revision", { text: "Pieces", end: true }, "Why not"];

/** Lots that stay where they are, or do not go everywhere. */
export function Staying({ lots }: { readonly lots: readonly StayingLot[] }) {
  if (lots.length === 0) return null;
  return (
    <details className="disclosure prints my-3 border-rule border-y">
      <summary className="py-2 font-semibold">What does not go, or not everywhere</summary>
      <RowTable caption="Lots that stay, and why" heads={HEADS}>
        {lots.map(({ siteCode, bin, revision, pieces, why }) => (
          <tr key={`${siteCode} ${bin} ${revision} ${why}`}>
            <th scope="row">{siteCode}</th>
            <td>{bin}</td>
            <td>{revision === "" ? "not known" : revision}</td>
            <td data-align="end">{plainNumber(pieces)}</td>
            <td>{why}</td>
          </tr>
        ))}
      </RowTable>
    </details>
  );
}
