"use client";

import { Notice } from "@/app/_ui/Notice";
import { RowTable } from "@/app/_ui/RowTable";
import { UndoBar } from "@/app/_ui/UndoBar";
import { RetireMachine } from "@/app/(workspace)/_components/RetireMachine";
import { useDone } from "@/app/(workspace)/_components/useDone";
import { restoreThis, retireThis } from "@/app/(workspace)/machines/[id]/actions";
import type { SeenLast } from "@/lib/view/seenLast";
import { day } from "@/lib/view/time";

const ACTIONS = { retire: retireThis, restore: restoreThis };

interface SeenLastRowsProps {
  readonly machineId: string;
  readonly label: string;
  readonly seen: SeenLast;
  readonly mayEdit: boolean;
}

/** When each source last spoke of the machine, and whether it is in service. */
export function SeenLastRows({ machineId, label, seen, mayEdit }: SeenLastRowsProps) {
  const { retiredOn, retiredReason, sources, places } = seen;
  const { done, tell, undo, close } = useDone();
  return (
    <>
      {retiredOn === null ? null : (
        <Notice kind="caution" title={`Out of service since ${day(retiredOn)}`}>
          {retiredReason || "No reason is recorded."} From that day it and all in it count in no figure.
        </Notice>
      )}
      <RowTable caption="Seen last, by source" heads={["Source", "Seen last"]}>
        {sources.map(({ source, lastOn }) => (
          <tr key={source}>
            <th scope="row">{source}</th>
            <td>{lastOn === null ? "never" : day(lastOn)}</td>
          </tr>
        ))}
      </RowTable>
      {places.length === 0 ? null : (
        <div className="mt-4">
          <RowTable
            caption="Seen in network lists"
            heads={["Place", "Serial on record", "List", "Seen last", "Firmware seen"]}
          >
            {places.map(({ place, serial, source, lastOn, firmware }) => (
              <tr key={`${place} ${source}`}>
                <th scope="row">{place}</th>
                <td>{serial ?? "not known"}</td>
                <td>{source}</td>
                <td>{day(lastOn)}</td>
                <td>{firmware || "not said"}</td>
              </tr>
            ))}
          </RowTable>
        </div>
      )}
      {mayEdit ? (
        <div className="no-print mt-3">
          <RetireMachine {...{ machineId, label, retiredOn, tell, ...ACTIONS }} />
        </div>
      ) : null}
      <UndoBar message={done?.message ?? null} {...(done?.undo ? { onUndo: undo } : {})} onClose={close} />
    </>
  );
}
