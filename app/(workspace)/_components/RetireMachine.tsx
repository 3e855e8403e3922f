"use client";

import { Dialog } from "@/app/_ui/Dialog";
import { orOffline } from "@/app/_ui/draft/orOffline";
import { EntryForm } from "@/app/_ui/EntryForm";
import { TextareaField } from "@/app/_ui/field/TextareaField";
import type { Done } from "@/app/(workspace)/_components/useDone";
import type { Refusal } from "@/lib/access/action";
import type { Result } from "@/lib/kernel/result";

/** The actions of the page it stands on. */
export interface RetireActions {
  readonly retire: (asked: {
    readonly machineId: string;
    readonly reason: string;
    readonly seen: null;
  }) => Promise<Result<{ retiredOn: string }, Refusal>>;
  readonly restore: (asked: {
    readonly machineId: string;
    readonly seen: string;
  }) => Promise<Result<null, Refusal>>;
}

interface RetireMachineProps extends RetireActions {
  readonly machineId: string;
  readonly label: string;
  /** Day it was retired; null is in service. */
  readonly retiredOn: string | null;
  readonly tell: (done: Done) => void;
}

/** Takes a machine out of service with a reason, or puts it back. */
export function RetireMachine(props: RetireMachineProps) {
  const { machineId, label, retiredOn, tell, retire, restore } = props;
  if (retiredOn !== null)
    return (
      <Dialog trigger={`Put ${label} back into service`} title={`Put ${label} back into service`}>
        {(close) => (
          <EntryForm
            submit="Put it back"
            save={() => orOffline(restore({ machineId, seen: retiredOn }))}
            onSaved={() => {
              close();
              tell({ message: `${label} is in service again.` });
            }}
          >
            {() => <p>From then on it counts in every figure as before.</p>}
          </EntryForm>
        )}
      </Dialog>
    );
  return (
    <Dialog trigger={`Retire ${label}`} kind="quiet" title={`Take ${label} out of service`}>
      {(close) => (
        <EntryForm
          submit="Retire it"
          save={(text) => orOffline(retire({ machineId, reason: text("reason"), seen: null }))}
          onSaved={({ retiredOn: seen }) => {
            close();
            tell({
              message: `${label} is out of service.`,
              undo: () => restore({ machineId, seen }),
            });
          }}
        >
          {(errorOf) => (
            <>
              <p>
                From today on it and all in it count in no figure. Its records stay, and it can be put back.
                Somebody should have stood in front of it: a list sees only what was powered.
              </p>
              <TextareaField name="reason" label="Why" required maxLength={300} error={errorOf("reason")} />
            </>
          )}
        </EntryForm>
      )}
    </Dialog>
  );
}
