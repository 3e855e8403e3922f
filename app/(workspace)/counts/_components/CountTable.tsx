import { AsOfLink } from "@/app/_ui/AsOfLink";
import { EmptyState } from "@/app/_ui/EmptyState";
import { RowTable } from "@/app/_ui/RowTable";
import { binsWords, type ListedCount } from "@/lib/view/count";
import { plainNumber } from "@/lib/view/number";
import { day } from "@/lib/view/time";

const HEADS = ["Count", "Site", "Bins", "Opened", { text: "Lines counted", end: true }, "State"] as const;

/** Counts under way first, then those posted, the newest first. */
export function CountTable({ counts }: { readonly counts: readonly ListedCount[] }) {
  if (counts.length === 0)
    return (
      <EmptyState title="No count yet">
        A count takes the lots of a store or of some bins, asks for the pieces found, and books the
        differences. Whoever changes the stock of a site opens one below.
      </EmptyState>
    );
  return (
    <RowTable caption="Counts" heads={HEADS}>
      {counts.map((count) => (
        <tr key={count.id}>
          <th scope="row">
            <AsOfLink href={`/counts/${count.id}`} className="row-link">
              {count.siteCode} {count.reference}
            </AsOfLink>
          </th>
          <td>{count.siteName}</td>
          <td>
            {binsWords(count.bins)}, {count.blind ? "book hidden" : "book shown"}
          </td>
          <td className="whitespace-nowrap">{day(count.openedOn)}</td>
          <td data-align="end">
            {plainNumber(count.counted)} of {plainNumber(count.lines)}
          </td>
          <td>
            {count.postedOn === null ? (
              <span className="font-semibold">under way</span>
            ) : (
              `posted ${day(count.postedOn)} by ${count.postedBy}`
            )}
          </td>
        </tr>
      ))}
    </RowTable>
  );
}
