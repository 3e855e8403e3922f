import { AsOfLink } from "@/app/_ui/AsOfLink";
import { RowTable } from "@/app/_ui/RowTable";
import { plainNumber } from "@/lib/view/number";
import type { HeldPieces } from "@/lib/view/storageCare";
import { day } from "@/lib/view/time";

const HEADS = ["Bin", "Part", { text: "Pieces", end: true }, "Since", "By", "Why"] as const;

/** Pieces on hold, the oldest first; without a record of who and why stands first. */
export function HeldTable({ held }: { readonly held: readonly HeldPieces[] }) {
  if (held.length === 0) return <p>No piece is on hold.</p>;
  return (
    <RowTable caption="Pieces on hold" heads={HEADS}>
      {held.map((one) => (
        <tr key={one.id}>
          <th scope="row" className="whitespace-nowrap">
            {one.siteCode} {one.bin}
          </th>
          <td>
            <AsOfLink href={`/parts/${one.partId}#stock`}>{one.part}</AsOfLink>
          </td>
          <td data-align="end">{one.pieces === null ? "not counted" : plainNumber(one.pieces)}</td>
          <td>{one.heldOn === null ? "not recorded" : day(one.heldOn)}</td>
          <td>{one.heldBy ?? "not recorded"}</td>
          <td>{one.reason ?? "not recorded"}</td>
        </tr>
      ))}
    </RowTable>
  );
}
