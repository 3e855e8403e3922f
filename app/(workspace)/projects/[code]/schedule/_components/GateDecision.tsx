import { useState } from "react";
import { Button } from "@/app/_ui/Button";
import { Dialog } from "@/app/_ui/Dialog";
import { EntryForm } from "@/app/_ui/EntryForm";
import { TextField } from "@/app/_ui/field/TextField";
import type { useProjectChange } from "@/app/(workspace)/projects/[code]/_components/useProjectChange";
import { addThisGateItem, decideThisGate } from "@/app/(workspace)/projects/[code]/schedule/actions";
import type { ScheduleGate } from "@/lib/view/schedule";

interface GateDecisionProps {
  readonly projectId: string;
  readonly gate: ScheduleGate;
  readonly change: ReturnType<typeof useProjectChange>;
}

const DONE = { open: "is open again", passed: "is passed", held: "is held" } as const;

/** Passes the gate, holds it with a reason, opens it again, or adds what has to be true. */
export function GateDecision({ projectId, gate, change }: GateDecisionProps) {
  const [reason, setReason] = useState("");
  const ids = { projectId, gateId: gate.id };
  const decide = (decision: ScheduleGate["decision"]) =>
    change.run({
      run: () => decideThisGate({ ...ids, version: gate.version, decision, reason }),
      done: `“${gate.name}” ${DONE[decision]}.`,
      undo: () =>
        decideThisGate({ ...ids, version: gate.version + 1, decision: gate.decision, reason: gate.reason }),
      after: () => setReason(""),
    });
  return (
    <div className="no-print flex flex-wrap items-end gap-3">
      {gate.decision === "passed" ? (
        <Button onClick={() => decide("open")}>Open it again</Button>
      ) : (
        <>
          <TextField
            name={`reason ${gate.id}`}
            label="Reason"
            maxLength={400}
            value={reason}
            onChange={(event) => setReason(event.target.value)}
            error={change.refusal?.fields?.reason}
          />
          <Button onClick={() => decide("passed")}>Pass: go</Button>
          <Button onClick={() => decide("held")}>Hold: no-go</Button>
          <AddItem {...{ ids, gate, change }} />
        </>
      )}
    </div>
  );
}

interface AddItemProps extends Pick<GateDecisionProps, "gate" | "change"> {
  readonly ids: { readonly projectId: string; readonly gateId: string };
}

/** Adds something that has to be true before the gate is passed. */
function AddItem({ ids, gate, change }: AddItemProps) {
  return (
    <Dialog trigger="Add an item" kind="quiet" title={`Add to “${gate.name}”`}>
      {(close) => (
        <EntryForm
          submit="Add"
          save={(text) => addThisGateItem({ ...ids, text: text("text"), who: text("who") })}
          onSaved={() => {
            change.tell({ message: `Added to “${gate.name}”.`, undo: null });
            close();
          }}
        >
          {(errorOf) => (
            <>
              <TextField
                name="text"
                label="What has to be true"
                required
                maxLength={200}
                error={errorOf("text")}
              />
              <TextField name="who" label="Who answers for it" maxLength={80} error={errorOf("who")} />
            </>
          )}
        </EntryForm>
      )}
    </Dialog>
  );
}
