import { AsOfLink } from "@/app/_ui/AsOfLink";
import { RowTable } from "@/app/_ui/RowTable";
import { plainNumber, significant } from "@/lib/view/number";
import type { PartDossier } from "@/lib/view/partDossier";
import type { PartExperience } from "@/lib/view/partExperience";
import { familyGroups, type PooledGroup, poolingOf, siteGroups } from "@/lib/view/pooling";

interface PoolingProps {
  readonly part: PartDossier;
  readonly experience: PartExperience;
}

/** Whether the sites of the part, and the parts of its family, may share one rate. */
export function Pooling({ part, experience }: PoolingProps) {
  const family = familyGroups(experience);
  return (
    <>
      <h3 className="mt-6 mb-2 font-semibold">May they share one rate?</h3>
      <Compared noun="sites" groups={siteGroups(experience)} first="Site" />
      {family === null ? (
        <p className="mb-3">
          {part.number} belongs to no family: it borrows from its class, and no sister part is compared.
        </p>
      ) : (
        <Compared noun="parts of the family" groups={family} first="Part, all sites" />
      )}
      <p className="measure text-ink-2 text-sm">
        Pearson&apos;s chi-square: the sum of (counted − expected)² ÷ expected over the rows, expected at the
        rate of all rows together; p is the chance of so large a sum when all share one rate. The figures pool
        either way: where rows differ, the rate of each row tells more than the pooled one.
      </p>
    </>
  );
}

interface ComparedProps {
  readonly noun: string;
  readonly groups: readonly PooledGroup[];
  readonly first: string;
}

function Compared({ noun, groups, first }: ComparedProps) {
  const failures = poolingOf(groups, "failures", noun);
  const removals = poolingOf(groups, "removals", noun);
  const own = (value: number | null) => (value === null ? "–" : significant(value, 2));
  const heads = [
    "Unit-years",
    "Failures",
    "Expected",
    "Rate",
    "Removals",
    "Expected removals",
    "Removal rate",
  ];
  return (
    <div className="mb-4">
      <p className="measure mb-2">
        <span className="font-semibold">Failures:</span> {failures.words}{" "}
        <span className="font-semibold">Removals:</span> {removals.words}
      </p>
      <RowTable
        caption={`Counts of the ${noun} beside what they would have at one rate`}
        heads={[first, ...heads.map((text) => ({ text, end: true }))]}
      >
        {failures.rows.map((row, i) => (
          <tr key={row.name}>
            <th scope="row">
              {row.href === null ? row.name : <AsOfLink href={row.href}>{row.name}</AsOfLink>}
            </th>
            <td data-align="end">{plainNumber(row.unitYears, 1)}</td>
            <td data-align="end">{plainNumber(row.events)}</td>
            <td data-align="end">{own(row.expected)}</td>
            <td data-align="end">{own(row.rate)}</td>
            <td data-align="end">{plainNumber(removals.rows[i]?.events ?? 0)}</td>
            <td data-align="end">{own(removals.rows[i]?.expected ?? null)}</td>
            <td data-align="end">{own(removals.rows[i]?.rate ?? null)}</td>
          </tr>
        ))}
      </RowTable>
    </div>
  );
}
