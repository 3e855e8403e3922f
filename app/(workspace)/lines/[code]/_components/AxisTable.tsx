import { PlacedWords } from "@/app/(workspace)/lines/[code]/_components/PlacedWords";
import type { AxisRow, MachineRow } from "@/lib/view/lineDossier";
import { NOT_KNOWN, significant } from "@/lib/view/number";

const HEADS = ["Axis", "Drive", "Motor", "Network and node", "Feedback", "Scaling", "Since"] as const;

/** The axes of a machine: what sits in their places, how they are reached and how they are scaled. */
export function AxisTable({ machine }: { readonly machine: MachineRow }) {
  if (machine.axes.length === 0) return <p className="text-ink-2">No axis is recorded on this machine.</p>;
  return (
    <section className="table-frame" aria-label={`Axes of ${machine.code}`}>
      <table className="table">
        <caption className="sr-only">Axes of {machine.code}</caption>
        <thead>
          <tr>
            {HEADS.map((head) => (
              <th key={head} scope="col" className="label">
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {machine.axes.map((axis) => (
            <tr key={axis.code} id={`axis-${machine.code}-${axis.code}`} className="target:bg-accent-soft">
              <th scope="row">
                {axis.code}
                {axis.name === null ? null : (
                  <span translate="no" className="block text-ink-2 text-xs">
                    {axis.name}
                  </span>
                )}
              </th>
              <td>
                <PlacedWords
                  items={axis.items.filter((item) => item.itemClass === "drive")}
                  machine={machine.code}
                  what="drive"
                />
              </td>
              <td>
                <PlacedWords
                  items={axis.items.filter((item) => item.itemClass === "motor")}
                  machine={machine.code}
                  what="motor"
                />
              </td>
              <td>{networkWords(axis)}</td>
              <td>{axis.feedback ?? NOT_KNOWN}</td>
              <td>{scalingWords(axis)}</td>
              <td>{axis.inServiceYear ?? NOT_KNOWN}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

function networkWords({ network, nodeAddress, ringOrder }: AxisRow): string {
  if (network === null) return NOT_KNOWN;
  const node = nodeAddress === null ? "node not known" : `node ${nodeAddress}`;
  return ringOrder === null ? `${network}, ${node}` : `${network}, ${node}, place ${ringOrder} in the ring`;
}

function scalingWords({ countsPerUnit, travelUnit }: AxisRow): string {
  if (countsPerUnit === null) return NOT_KNOWN;
  return `${significant(countsPerUnit, 6)} counts per ${travelUnit ?? "unit of travel"}`;
}
