import { AsOfLink } from "@/app/_ui/AsOfLink";
import { RowTable } from "@/app/_ui/RowTable";
import { Section } from "@/app/_ui/Section";
import type { ReviewMark } from "@/lib/view/reviewRecord";
import { day } from "@/lib/view/time";

/** The closed reviews of the site, the latest first. */
export function PastReviews({ past }: { readonly past: readonly ReviewMark[] }) {
  return (
    <Section
      title="Reviews held"
      id="held"
      lead="Each stands as it was closed, and prints on two pages at most."
    >
      {past.length === 0 ? (
        <p>None yet. The first one compares with the records as known a week earlier.</p>
      ) : (
        <RowTable caption="Reviews held" heads={["Day", "Opened by", "Closed by"]}>
          {past.map(({ id, heldOn, openedBy, closedBy }) => (
            <tr key={id}>
              <th scope="row">
                <AsOfLink href={`/review/${id}`} className="row-link" data-row-link="">
                  {day(heldOn)}
                </AsOfLink>
              </th>
              <td>{openedBy}</td>
              <td>{closedBy}</td>
            </tr>
          ))}
        </RowTable>
      )}
    </Section>
  );
}
