import { AsOfLink } from "@/app/_ui/AsOfLink";
import { EvidenceMark } from "@/app/_ui/EvidenceMark";
import { RowTable } from "@/app/_ui/RowTable";
import { profileFamilyName } from "@/lib/retrofit/profileFamilies";
import { evidenceMark } from "@/lib/view/evidence";
import {
  countsWords,
  gearingWords,
  type MachineAxis,
  networkKindName,
  travelWords,
} from "@/lib/view/machine";
import { NOT_KNOWN } from "@/lib/view/number";

const HEADS = [
  "Axis",
  "Drive",
  "Motor",
  "Feedback",
  "Network",
  "Node",
  "Place in ring",
  "Gearing, motor : load",
  "Travel per load turn",
  "Counts per motor turn",
  "Counts per unit of travel",
  "Since",
  "Evidence",
];

/** The axes of a machine, each with how it is driven, reached and scaled. */
export function AxisRows({ axes }: { readonly axes: readonly MachineAxis[] }) {
  if (axes.length === 0) return <p>No axis is recorded on this machine. Load its axis survey.</p>;
  return (
    <RowTable caption="Axes of the machine" heads={HEADS}>
      {axes.map((axis) => (
        <tr key={axis.id} id={`axis-${axis.code}`} className="target:bg-accent-soft">
          <th scope="row">
            {axis.code}
            {axis.name === null ? null : (
              <span translate="no" className="block text-ink-2 text-xs">
                {axis.name}
              </span>
            )}
          </th>
          <td>
            <ItemsOf axis={axis} itemClass="drive" />
          </td>
          <td>
            <ItemsOf axis={axis} itemClass="motor" />
          </td>
          <td>{axis.feedback ?? NOT_KNOWN}</td>
          <td>
            <NetworkOf axis={axis} />
          </td>
          <td>{axis.nodeAddress ?? NOT_KNOWN}</td>
          <td>{ringPlace(axis)}</td>
          <td>{gearingWords(axis)}</td>
          <td>{travelWords(axis)}</td>
          <td>{axis.countsPerRev ?? NOT_KNOWN}</td>
          <td>{countsWords(axis)}</td>
          <td>{axis.inServiceYear ?? NOT_KNOWN}</td>
          <td>
            <EvidenceMark {...evidenceMark(axis.evidence)} />
          </td>
        </tr>
      ))}
    </RowTable>
  );
}

function ringPlace({ network, ringOrder }: MachineAxis): string {
  if (network !== null && network.kind !== "fibre_ring") return "no ring";
  return ringOrder === null ? NOT_KNOWN : String(ringOrder);
}

function NetworkOf({ axis: { id, network } }: { readonly axis: MachineAxis }) {
  if (network === null) return <>{NOT_KNOWN}</>;
  return (
    <>
      {network.kind === "fibre_ring" ? (
        <AsOfLink href={`/rings/${network.id}#node-${id}`} className="whitespace-nowrap">
          {network.name}
        </AsOfLink>
      ) : (
        network.name
      )}
      <span className="block text-ink-2 text-xs">
        {networkKindName(network.kind)}
        {network.profileFamily === null ? null : `, ${profileFamilyName(network.profileFamily)}`}
      </span>
    </>
  );
}

interface ItemsOfProps {
  readonly axis: MachineAxis;
  readonly itemClass: "drive" | "motor";
}

function ItemsOf({ axis, itemClass }: ItemsOfProps) {
  const places = axis.positions.filter((position) => position.itemClass === itemClass);
  if (places.length === 0) return <span className="text-ink-2">no {itemClass} recorded</span>;
  return places.map(({ id, part }) => (
    <span key={id} className="block whitespace-nowrap">
      {part === null ? "not identified" : <AsOfLink href={`/parts/${part.id}`}>{part.number}</AsOfLink>}
    </span>
  ));
}
