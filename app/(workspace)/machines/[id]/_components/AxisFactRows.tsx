"use client";

import { Dialog } from "@/app/_ui/Dialog";
import { RowTable } from "@/app/_ui/RowTable";
import { UndoBar } from "@/app/_ui/UndoBar";
import { WhereFrom } from "@/app/_ui/WhereFrom";
import { useDone } from "@/app/(workspace)/_components/useDone";
import { AxisFactsForm } from "@/app/(workspace)/machines/[id]/_components/AxisFactsForm";
import { saveAxisFacts } from "@/app/(workspace)/machines/[id]/actions";
import type { AxisFacts, FactGroup } from "@/lib/schema/axisFacts";
import {
  cableWords,
  endsWords,
  homingWords,
  knownWords,
  plainFacts,
  travelFindings,
  wayWords,
} from "@/lib/view/axisFacts";
import type { MachineAxis } from "@/lib/view/machine";

interface AxisFactRowsProps {
  readonly axes: readonly MachineAxis[];
  readonly mayEdit: boolean;
}

const HEADS = ["Axis", "Power cable", "Feedback cable", "Travel", "Hardware ends", "Software ends", "Homing"];

/** Cables, travel and homing of each axis, and what can be changed about them. */
export function AxisFactRows({ axes, mayEdit }: AxisFactRowsProps) {
  const { done, tell, undo, close } = useDone();
  if (axes.length === 0) return <p>No axis is recorded on this machine.</p>;
  return (
    <>
      <RowTable caption="Cables, travel and homing" heads={mayEdit ? [...HEADS, "Change"] : HEADS}>
        {axes.map((axis) => {
          const seen = plainFacts(axis);
          return (
            <tr key={axis.id}>
              <th scope="row">
                {axis.code}
                <WhereFrom entity="Axis" id={axis.id} of={axis.code} />
              </th>
              <Fact words={cableWords(axis, "powerCable")} facts={axis} group="powerCable" />
              <Fact words={cableWords(axis, "feedbackCable")} facts={axis} group="feedbackCable" />
              <Fact words={wayWords(axis)} facts={axis} group="travel" />
              <td>{endsWords(axis, "hard")}</td>
              <td>
                {endsWords(axis, "soft")}
                {travelFindings(axis).map((finding) => (
                  <span key={finding} className="block border-worse border-l-4 pl-2 text-sm">
                    {finding}
                  </span>
                ))}
              </td>
              <Fact words={homingWords(axis)} facts={axis} group="homing" />
              {mayEdit ? (
                <td>
                  <Dialog
                    trigger={`Change ${axis.code}`}
                    kind="quiet"
                    title={`Cables, travel and homing of ${axis.code}`}
                    wide
                  >
                    {(closeDialog) => (
                      <AxisFactsForm
                        axisId={axis.id}
                        seen={seen}
                        onSaved={(written) => {
                          closeDialog();
                          tell({
                            message: `Axis ${axis.code} is written down.`,
                            undo: () => saveAxisFacts({ axisId: axis.id, seen: written, wanted: seen }),
                          });
                        }}
                      />
                    )}
                  </Dialog>
                </td>
              ) : null}
            </tr>
          );
        })}
      </RowTable>
      <UndoBar message={done?.message ?? null} {...(done?.undo ? { onUndo: undo } : {})} onClose={close} />
    </>
  );
}

interface FactProps {
  readonly words: string;
  readonly facts: AxisFacts;
  readonly group: FactGroup;
}

function Fact({ words, facts, group }: FactProps) {
  return (
    <td className="min-w-44">
      {words}
      <span className="block text-ink-2 text-xs">{knownWords(facts, group)}</span>
    </td>
  );
}
