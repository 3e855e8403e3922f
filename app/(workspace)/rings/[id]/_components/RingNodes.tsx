import { AsOfLink } from "@/app/_ui/AsOfLink";
import { EvidenceMark } from "@/app/_ui/EvidenceMark";
import { Notice } from "@/app/_ui/Notice";
import { RowTable } from "@/app/_ui/RowTable";
import { Section } from "@/app/_ui/Section";
import { type RingNode, readRing } from "@/lib/retrofit/ring";
import { evidenceMark } from "@/lib/view/evidence";
import { NOT_KNOWN } from "@/lib/view/number";
import { findingWords, neighbourWords, type RingSheetRow } from "@/lib/view/ring";

const HEADS = [
  { text: "Place", end: true },
  { text: "Address", end: true },
  "Axis",
  "Drive",
  "Light from",
  "Light to",
  "Controller",
];

/** The nodes in light-path order, and what the record of them leaves open. */
export function RingNodes({ rows }: { readonly rows: readonly RingSheetRow[] }) {
  const ring = readRing(rows);
  if (!ring.ok)
    return (
      <Notice kind="problem" title="This record is no ring">
        Row {ring.error.row}: {ring.error.reason} Correct the axis survey and load it again.
      </Notice>
    );
  const { nodes, findings } = ring.value;
  return (
    <>
      <Section title="What the record leaves open">
        {findings.length === 0 ? (
          <p>Places, addresses and neighbours fit together. That is the record, not a look at the fibre.</p>
        ) : (
          <ul className="measure list-disc pl-5">
            {findings.map(findingWords).map((words) => (
              <li key={words}>{words}</li>
            ))}
          </ul>
        )}
      </Section>
      <Section title="Nodes in light-path order">
        <RowTable caption="Nodes of the ring" heads={HEADS}>
          {nodes.map((node) => (
            <NodeRow key={node.axisId} node={node} />
          ))}
        </RowTable>
      </Section>
    </>
  );
}

function NodeRow({ node }: { readonly node: RingNode<RingSheetRow> }) {
  return (
    <tr id={`node-${node.axisId}`} className="target:bg-accent-soft">
      <td data-align="end">{node.ringOrder ?? NOT_KNOWN}</td>
      <td data-align="end">{node.nodeAddress ?? NOT_KNOWN}</td>
      <th scope="row">
        <AsOfLink href={`/machines/${node.machineId}#axis-${encodeURIComponent(node.axisCode)}`}>
          {node.label}
        </AsOfLink>{" "}
        <EvidenceMark {...evidenceMark(node.evidence)} />
        {node.axisName === null ? null : <span className="block text-ink-2 text-xs">{node.axisName}</span>}
      </th>
      <td>
        {node.drive === null ? (
          "not identified"
        ) : (
          <AsOfLink href={`/parts/${node.drive.id}`}>{node.drive.number}</AsOfLink>
        )}
      </td>
      <td>{neighbourWords(node.upstream)}</td>
      <td>{neighbourWords(node.downstream)}</td>
      <td>{node.controller ?? NOT_KNOWN}</td>
    </tr>
  );
}
