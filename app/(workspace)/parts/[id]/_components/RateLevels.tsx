import { RowTable } from "@/app/_ui/RowTable";
import { SpanBar } from "@/app/_ui/SpanBar";
import { itemClassName } from "@/lib/view/linePart";
import { significant } from "@/lib/view/number";
import type { PartDossier } from "@/lib/view/partDossier";
import { type Kind, ladderOf, ladderRows, type PartExperience } from "@/lib/view/partExperience";
import { rateText } from "@/lib/view/partRates";

interface RateLevelsProps {
  readonly part: PartDossier;
  readonly experience: PartExperience;
}

/** What is believed from the class down to each site, and how much of it is borrowed. */
export function RateLevels(props: RateLevelsProps) {
  return (
    <>
      <h3 className="mt-6 mb-2 font-semibold">From the class down to the site</h3>
      <p className="measure mb-3 text-ink-2">
        Each level starts from the one above, at 100 unit-years of weight at most below the family, and adds
        what it counted itself. No event is not a rate of zero.
      </p>
      <Levels {...props} kind="failures" />
      <details className="disclosure prints my-3 border-rule border-y">
        <summary className="py-2 font-semibold">The removal rate, level by level</summary>
        <Levels {...props} kind="removals" />
      </details>
    </>
  );
}

function Levels({ part, experience, kind }: RateLevelsProps & { readonly kind: Kind }) {
  const ladder = ladderOf(experience, part.itemClass, kind);
  const rows = ladderRows(ladder, {
    itemClass: itemClassName(part.itemClass),
    family: part.family?.name ?? null,
    part: part.number,
    sites: experience.sites.map(({ code }) => code),
  });
  const max = Math.max(...rows.map(({ high }) => high));
  const name = kind === "failures" ? "Failure rate" : "Removal rate";
  return (
    <div className="mb-4">
      <RowTable
        caption={`${name} by level`}
        heads={[
          `${name} of`,
          "Borrowed",
          "Counted here",
          { text: "Per unit-year", end: true },
          "5 % to 95 %",
        ]}
      >
        {rows.map(({ level, mean, low, high, counted, borrowed }) => (
          <tr key={level}>
            <th scope="row" className="whitespace-nowrap">
              {level}
            </th>
            <td className="whitespace-nowrap">{borrowed}</td>
            <td className="whitespace-nowrap">{counted}</td>
            <td data-align="end">{significant(mean, 3)}</td>
            <td>
              <SpanBar {...{ low, mean, high, max }} text={`${level}: ${rateText({ mean, low, high })}`} />{" "}
              <span className="whitespace-nowrap text-ink-2 text-sm">
                {significant(low, 2)} to {significant(high, 2)}
              </span>
            </td>
          </tr>
        ))}
      </RowTable>
    </div>
  );
}
