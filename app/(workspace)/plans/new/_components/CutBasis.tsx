import { Section } from "@/app/_ui/Section";
import { likelyNorms, type Norm } from "@/lib/retrofit/costNorm";
import { plainNumber } from "@/lib/view/number";
import type { Candidates } from "@/lib/view/planCut";

const NORMS: readonly { readonly name: string; readonly unit: string; readonly norm: Norm }[] = [
  { name: "Hour of work", unit: "EUR", norm: likelyNorms.hourlyRate },
  { name: "Work for an axis", unit: "h", norm: likelyNorms.hoursPerAxis },
  { name: "Work for a machine", unit: "h", norm: likelyNorms.hoursPerMachine },
  { name: "Work for a new controller", unit: "h", norm: likelyNorms.hoursPerController },
  { name: "Drive, where no successor is priced", unit: "EUR", norm: likelyNorms.drive },
  { name: "Motor", unit: "EUR", norm: likelyNorms.motor },
  { name: "Cables of an axis", unit: "EUR", norm: likelyNorms.cablesPerAxis },
  { name: "Controller", unit: "EUR", norm: likelyNorms.controller },
  { name: "Operator panel", unit: "EUR", norm: likelyNorms.hmi },
];

/** What the costs are made of, what they leave out, and what they were computed from. */
export function CutBasis({ candidates }: { readonly candidates: Candidates }) {
  return (
    <Section
      title="How the cost is estimated"
      lead="Drives that are out of open supply, undated or not identified are replaced; so are motors out of open supply on their axes, and controllers and operator panels of those machines that can no longer be ordered."
    >
      <table className="table max-w-2xl">
        <caption className="sr-only">Norms behind the estimates</caption>
        <thead>
          <tr>
            <th scope="col" className="label">
              Norm
            </th>
            <th scope="col" className="label" data-align="end">
              Low
            </th>
            <th scope="col" className="label" data-align="end">
              Typical
            </th>
            <th scope="col" className="label" data-align="end">
              High
            </th>
          </tr>
        </thead>
        <tbody>
          {NORMS.map(({ name, unit, norm }) => (
            <tr key={name}>
              <th scope="row">
                {name}, {unit}
              </th>
              {norm.map((value, at) => (
                <td key={["low", "typical", "high"][at]} data-align="end">
                  {plainNumber(value, Number.isInteger(value) ? 0 : 1)}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      <p className="measure mt-3 text-ink-2 text-sm">
        All norms are common practice without a source, evidence assumed. The estimate is (low + 4 × typical +
        high) / 6, with {plainNumber(likelyNorms.contingency[1] * 100)} % contingency in the typical case; low
        and high are ends of common practice, not statistical points. It leaves out raising firmware, memory
        that is too small, stranded I/O, new cabinets, safety re-validation beyond the machine's hours, and
        production lost in the window. Computed as of {candidates.asOf} by engine {candidates.engine} on data
        version {candidates.dataVersion}; {candidates.lines.length} of the group's {candidates.groupLines}{" "}
        lines.
      </p>
    </Section>
  );
}
