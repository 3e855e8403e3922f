import { Section } from "@/app/_ui/Section";
import type { CostNorms } from "@/lib/retrofit/costNorm";
import { plainNumber } from "@/lib/view/number";
import type { Candidates } from "@/lib/view/planCut";

const NORMS = [
  { key: "hourlyRate", name: "Hour of work", unit: "EUR" },
  { key: "hoursPerAxis", name: "Work for an axis", unit: "h" },
  { key: "hoursPerMachine", name: "Work for a machine", unit: "h" },
  { key: "hoursPerController", name: "Work for a new controller", unit: "h" },
  { key: "drive", name: "Drive, where no successor is priced", unit: "EUR" },
  { key: "motor", name: "Motor", unit: "EUR" },
  { key: "cablesPerAxis", name: "Cables of an axis", unit: "EUR" },
  { key: "controller", name: "Controller", unit: "EUR" },
  { key: "hmi", name: "Operator panel", unit: "EUR" },
] as const satisfies readonly { key: keyof CostNorms; name: string; unit: string }[];

interface CutBasisProps {
  readonly candidates: Candidates;
  readonly norms: CostNorms;
}

/** What the costs are made of, what they leave out, and what they were computed from. */
export function CutBasis({ candidates, norms }: CutBasisProps) {
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
          {NORMS.map(({ key, name, unit }) => (
            <tr key={key}>
              <th scope="row">
                {name}, {unit}
              </th>
              {norms[key].map((value, at) => (
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
        high) / 6, with {plainNumber(norms.contingency[1] * 100)} % contingency in the typical case; low and
        high are ends of common practice, not statistical points. It leaves out raising firmware, memory that
        is too small, stranded I/O, new cabinets, safety re-validation beyond the machine's hours, and
        production lost in the window. Computed as of {candidates.asOf} by engine {candidates.engine} on data
        version {candidates.dataVersion}; {candidates.lines.length} of the group's {candidates.groupLines}{" "}
        lines.
      </p>
    </Section>
  );
}
