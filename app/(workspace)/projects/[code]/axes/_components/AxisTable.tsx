import { AsOfLink } from "@/app/_ui/AsOfLink";
import type { AxisInProject } from "@/lib/view/axisRecord";
import { axisState } from "@/lib/view/axisRecord";
import { plainNumber } from "@/lib/view/number";
import { day } from "@/lib/view/time";

interface AxisTableProps {
  readonly code: string;
  readonly axes: readonly AxisInProject[];
}

/** Every axis of the project with how far its record is. */
export function AxisTable({ code, axes }: AxisTableProps) {
  return (
    <div className="table-frame">
      <table className="table">
        <caption className="sr-only">Axes of the project</caption>
        <thead>
          <tr>
            <th scope="col" className="label">
              Axis
            </th>
            <th scope="col" className="label">
              Machine
            </th>
            <th scope="col" className="label">
              Feedback
            </th>
            <th scope="col" className="label" data-align="end">
              Counts per unit as recorded
            </th>
            <th scope="col" className="label" data-align="end">
              Checks done
            </th>
            <th scope="col" className="label">
              State
            </th>
          </tr>
        </thead>
        <tbody>
          {axes.map((axis) => {
            const { done, checks, words } = axisState(axis);
            return (
              <tr key={axis.id}>
                <th scope="row">
                  <AsOfLink
                    href={`/projects/${code}/axes/${axis.id}`}
                  >{`${axis.machineCode} ${axis.code}`}</AsOfLink>
                </th>
                <td>{axis.machineName}</td>
                <td>{axis.feedback ?? "not known"}</td>
                <td data-align="end">
                  {axis.countsPerUnit === null
                    ? "not known"
                    : `${plainNumber(axis.countsPerUnit)} / ${axis.travelUnit ?? "unit"}`}
                </td>
                <td data-align="end">{`${done} of ${checks.length}`}</td>
                <td>{axis.acceptedOn === null ? words : `${words} ${day(axis.acceptedOn)}`}</td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </div>
  );
}
