"use client";

import { RowTable } from "@/app/_ui/RowTable";
import { UndoBar } from "@/app/_ui/UndoBar";
import { ChooseButton } from "@/app/(workspace)/assumptions/_components/ChooseButton";
import { useSetChoice } from "@/app/(workspace)/assumptions/_components/useSetChoice";
import type { AssumptionChoice } from "@/lib/schema/assumptions";
import { assumptionKindName } from "@/lib/view/assumptionSet";
import type { VersionRow } from "@/lib/view/assumptionTable";
import { day } from "@/lib/view/time";

interface VersionTableProps {
  readonly versions: readonly VersionRow[];
  readonly inUse: AssumptionChoice;
  readonly mayChange: boolean;
}

const HEADS = ["Version", "What changed", "Basis", "Owner", "Written", "In use"];

/** Every version that was written down, newest first. */
export function VersionTable({ versions, inUse, mayChange }: VersionTableProps) {
  const { message, choose, undo, close } = useSetChoice();
  const bar = undo ? { message, onUndo: undo, onClose: close } : { message, onClose: close };
  if (versions.length === 0)
    return <p>None yet: the sets of the product are in version 1, and nobody has stated an own value.</p>;
  return (
    <>
      <RowTable caption="Versions of the assumptions" heads={HEADS}>
        {versions.map((version) => (
          <tr key={`${version.kind} ${version.version}`}>
            <th scope="row">
              {assumptionKindName(version.kind)}, version {version.version}
            </th>
            <td>{version.kind === "own" ? <Changes changes={version.changes} /> : "Set of the product"}</td>
            <td>{version.note}</td>
            <td>{version.owner}</td>
            <td>
              {day(version.changedOn)} by {version.changedBy}
            </td>
            <td>
              {version.kind === inUse.kind && version.version === inUse.version ? (
                <strong>in use</strong>
              ) : mayChange ? (
                <ChooseButton choice={version} onChoose={choose} />
              ) : (
                "no"
              )}
            </td>
          </tr>
        ))}
      </RowTable>
      <UndoBar {...bar} />
    </>
  );
}

function Changes({ changes }: { readonly changes: readonly string[] }) {
  return changes.map((text) => (
    <span key={text} className="block">
      {text}
    </span>
  ));
}
