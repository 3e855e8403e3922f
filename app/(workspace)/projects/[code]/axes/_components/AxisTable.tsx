import { AsOfLink } from "@/app/_ui/AsOfLink";
import { RowTable } from "@/app/_ui/RowTable";
import type { AxisInProject } from "@/lib/view/axisRecord";
import { axisState } from "@/lib/view/axisRecord";
import { significant } from "@/lib/view/number";
import { day } from "@/lib/view/time";

interface AxisTableProps {
  readonly code: string;
  readonly axes: readonly AxisInProject[];
}

const HEADS = [
  "Axis",
  "Machine",
  "Feedback",
  { text: "Counts per unit as recorded", end: true },
  { text: "Checks done", end: true },
  "State",
];

/** Every axis of the project with how far its record is. */
export function AxisTable({ code, axes }: AxisTableProps) {
  return (
    <RowTable caption="Axes of the project" heads={HEADS}>
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
                : `${significant(axis.countsPerUnit, 8)} / ${axis.travelUnit ?? "unit"}`}
            </td>
            <td data-align="end">{`${done} of ${checks.length}`}</td>
            <td>{axis.acceptedOn === null ? words : `${words} ${day(axis.acceptedOn)}`}</td>
          </tr>
        );
      })}
    </RowTable>
  );
}
