"use client";

import { AsOfLink } from "@/app/_ui/AsOfLink";
import { RowTable } from "@/app/_ui/RowTable";
import { UndoBar } from "@/app/_ui/UndoBar";
import { RetireMachine } from "@/app/(workspace)/_components/RetireMachine";
import { useDone } from "@/app/(workspace)/_components/useDone";
import { restoreThisMachine, retireThisMachine } from "@/app/(workspace)/sightings/actions";
import { plainNumber } from "@/lib/view/number";
import type { GhostMachine } from "@/lib/view/sighting";
import { day } from "@/lib/view/time";

const ACTIONS = { retire: retireThisMachine, restore: restoreThisMachine };

interface GhostTableProps {
  readonly ghosts: readonly GhostMachine[];
  readonly maySettle: boolean;
}

/** Machines of which no list sees anything; each is proposed, none is retired by itself. */
export function GhostTable({ ghosts, maySettle }: GhostTableProps) {
  const { done, tell, undo, close } = useDone();
  return (
    <>
      {ghosts.length === 0 ? (
        <p className="text-ink-2">None: of every machine where a list looked, something was seen.</p>
      ) : (
        <RowTable
          caption="Machines no list sees"
          heads={[
            "Machine",
            { text: "Places, none seen", end: true },
            "Seen last in a list",
            { text: "Retire", print: false },
          ]}
        >
          {ghosts.map(({ machineId, label, places, lastSeenOn }) => (
            <tr key={machineId}>
              <th scope="row">
                <AsOfLink href={`/machines/${machineId}#seen`}>{label}</AsOfLink>
              </th>
              <td data-align="end">{plainNumber(places)}</td>
              <td>{lastSeenOn === null ? "never" : day(lastSeenOn)}</td>
              <td className="no-print">
                {maySettle ? (
                  <RetireMachine {...{ machineId, label, tell, ...ACTIONS }} retiredOn={null} />
                ) : null}
              </td>
            </tr>
          ))}
        </RowTable>
      )}
      <UndoBar message={done?.message ?? null} {...(done?.undo ? { onUndo: undo } : {})} onClose={close} />
    </>
  );
}
