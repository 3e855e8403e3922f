"use client";

import { Dialog } from "@/app/_ui/Dialog";
import { orOffline } from "@/app/_ui/draft/orOffline";
import { EntryForm } from "@/app/_ui/EntryForm";
import { NumberField } from "@/app/_ui/field/NumberField";
import { RowTable } from "@/app/_ui/RowTable";
import { UndoBar } from "@/app/_ui/UndoBar";
import { type Done, useDone } from "@/app/(workspace)/_components/useDone";
import { setThisEffort } from "@/app/(workspace)/footing/actions";
import type { FootingRow } from "@/lib/view/footing";
import { gapNoun } from "@/lib/view/gap";
import { plainNumber } from "@/lib/view/number";
import { day } from "@/lib/view/time";

interface SetEffortProps {
  readonly row: FootingRow;
  readonly tell: (done: Done) => void;
}

function SetEffort({ row, tell }: SetEffortProps) {
  const { key, title, norm, usualHours } = row;
  const before = norm === null ? "" : String(norm.hours);
  return (
    <Dialog trigger={`Change: ${title}`} kind="quiet" title={`Hours to mend: ${title}`}>
      {(close) => (
        <EntryForm
          submit="Set it"
          save={(text) =>
            orOffline(setThisEffort({ gap: key, hours: text("hours"), seen: norm?.version ?? null }))
          }
          onSaved={({ version }) => {
            close();
            const undo = () => setThisEffort({ gap: key, hours: before, seen: version });
            tell({ message: `Hours of “${title}” set.`, undo });
          }}
        >
          {(errorOf) => (
            <NumberField
              name="hours"
              label={`One ${gapNoun(row.subject)[0]}`}
              unit="h"
              hint={`Empty goes back to ${plainNumber(usualHours, 2)} h.`}
              min={0.01}
              step={0.01}
              defaultValue={norm?.hours ?? ""}
              error={errorOf("hours")}
            />
          )}
        </EntryForm>
      )}
    </Dialog>
  );
}

interface EffortTableProps {
  readonly rows: readonly FootingRow[];
  readonly mayChange: boolean;
}

/** What one piece of mending takes, and who says so. */
export function EffortTable({ rows, mayChange }: EffortTableProps) {
  const { done, tell, undo, close } = useDone();
  return (
    <>
      <RowTable
        caption="Hours to mend"
        heads={["Gap", { text: "Hours", end: true }, "Basis", { text: "Change", print: false }]}
      >
        {rows.map((row) => (
          <tr key={row.key}>
            <th scope="row">{row.title}</th>
            <td data-align="end">{plainNumber(row.hoursEach, 2)}</td>
            <td>
              {row.norm === null
                ? "common practice, no source"
                : `set by ${row.norm.changedBy} on ${day(row.norm.changedOn)}`}
            </td>
            <td className="no-print">{mayChange ? <SetEffort row={row} tell={tell} /> : null}</td>
          </tr>
        ))}
      </RowTable>
      <UndoBar message={done?.message ?? null} {...(done?.undo ? { onUndo: undo } : {})} onClose={close} />
    </>
  );
}
