import { useState, useTransition } from "react";
import { Button } from "@/app/_ui/Button";
import { Dialog } from "@/app/_ui/Dialog";
import { FormMessage } from "@/app/_ui/FormMessage";
import type { Done } from "@/app/(workspace)/_components/useDone";
import { removeDuty } from "@/app/(workspace)/dates/actions";
import type { Obligation } from "@/lib/view/obligation";

interface RemoveObligationProps {
  readonly duty: Obligation;
  readonly tell: (done: Done) => void;
}

/** Takes a duty that should never have stood here off the record; what was done is marked done instead. */
export function RemoveObligation({ duty, tell }: RemoveObligationProps) {
  return (
    <Dialog trigger="Remove" kind="quiet" title={`Remove: ${duty.title}`}>
      {(close) => (
        <Confirm
          duty={duty}
          tell={(done) => {
            close();
            tell(done);
          }}
        />
      )}
    </Dialog>
  );
}

function Confirm({ duty: { id, version, title }, tell }: RemoveObligationProps) {
  const [pending, start] = useTransition();
  const [refused, setRefused] = useState<string | null>(null);
  const send = () =>
    start(async () => {
      const answer = await removeDuty({ obligationId: id, version });
      if (answer.ok) tell({ message: `Removed: ${title}.` });
      else setRefused(answer.error.reason);
    });
  return (
    <div className="grid gap-4">
      <p>
        Remove only what was entered by mistake; mark as done what was done. The audit keeps what it said.
        This cannot be undone here.
      </p>
      <FormMessage kind="problem">{refused}</FormMessage>
      <div>
        <Button kind="danger" aria-disabled={pending} onClick={() => (pending ? undefined : send())}>
          Remove from the record
        </Button>
      </div>
    </div>
  );
}
