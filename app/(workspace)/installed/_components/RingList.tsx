import { AsOfLink } from "@/app/_ui/AsOfLink";
import { RowTable } from "@/app/_ui/RowTable";
import { readRing } from "@/lib/retrofit/ring";
import { count } from "@/lib/view/number";
import { type RingSheet, tiedTogether } from "@/lib/view/ring";

/** The rings of a line, each with what it ties together and what its record leaves open. */
export function RingList({ rings }: { readonly rings: readonly RingSheet[] }) {
  if (rings.length === 0) return <p>No ring is recorded on this line.</p>;
  return (
    <RowTable
      caption="Rings of the line"
      heads={["Ring", { text: "Nodes", end: true }, "Machines", "Record"]}
    >
      {rings.map(({ id, name, rows }) => (
        <tr key={id}>
          <th scope="row">
            <AsOfLink href={`/rings/${id}`}>{name}</AsOfLink>
          </th>
          <td data-align="end">{rows.length}</td>
          <td>{tiedTogether(rows).machines.join(", ")}</td>
          <td>{recordWords(rows)}</td>
        </tr>
      ))}
    </RowTable>
  );
}

function recordWords(rows: RingSheet["rows"]): string {
  const ring = readRing(rows);
  if (!ring.ok) return `row ${ring.error.row} refused`;
  const { length } = ring.value.findings;
  return length === 0 ? "nothing to find" : count(length, "finding");
}
