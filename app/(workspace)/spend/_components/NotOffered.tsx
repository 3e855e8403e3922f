import { AsOfLink } from "@/app/_ui/AsOfLink";
import { RowTable } from "@/app/_ui/RowTable";
import { Section } from "@/app/_ui/Section";
import { StageBadge } from "@/app/_ui/StageBadge";
import { money } from "@/lib/view/format";
import { count, plainNumber } from "@/lib/view/number";
import { notOfferedSums, notOfferedText, type NotOffered as Part } from "@/lib/view/spend";
import { stageBadge } from "@/lib/view/stage";

const MOST_SHOWN = 50;

/** Parts without a price, those that would avoid most first. */
function Unpriced({ parts }: { readonly parts: readonly Part[] }) {
  if (parts.length === 0) return null;
  return (
    <>
      <RowTable
        caption="Parts without a price"
        heads={["Part", "Supply stage", { text: "One piece would avoid", end: true }]}
      >
        {parts.slice(0, MOST_SHOWN).map(({ partId, number, stage, firstAvoids }) => (
          <tr key={partId}>
            <th scope="row">
              <AsOfLink href={`/parts/${partId}`}>{number}</AsOfLink>
            </th>
            <td>
              <StageBadge {...stageBadge(stage)} />
            </td>
            <td data-align="end">{firstAvoids === null ? "not worked out" : money(firstAvoids)}</td>
          </tr>
        ))}
      </RowTable>
      {parts.length > MOST_SHOWN ? <p>And {plainNumber(parts.length - MOST_SHOWN)} more.</p> : null}
    </>
  );
}

/** Parts the list leaves out, and why. */
export function NotOffered({ parts }: { readonly parts: readonly Part[] }) {
  if (parts.length === 0) return null;
  return (
    <Section
      title="Not in the list"
      id="not-offered"
      lead={`${count(parts.length, "part")} of which nothing is offered. A part without a price is not free and not worthless: it cannot be weighed.`}
    >
      <RowTable
        caption="Parts not offered, by reason"
        heads={["Why not", { text: "Parts", end: true }, "Such as"]}
      >
        {notOfferedSums(parts).map(({ why, parts: many, numbers }) => (
          <tr key={why}>
            <th scope="row">{notOfferedText(why)}</th>
            <td data-align="end">{plainNumber(many)}</td>
            <td>{numbers.join(", ")}</td>
          </tr>
        ))}
      </RowTable>
      <Unpriced parts={parts.filter(({ why }) => why === "no-price")} />
      <p className="mt-2 text-sm">
        <AsOfLink href="/cover">The cover ladder</AsOfLink> shows all of them, cheap blockers first.
      </p>
    </Section>
  );
}
