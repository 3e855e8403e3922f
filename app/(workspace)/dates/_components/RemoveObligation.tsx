import { Button } from "@/app/_ui/Button";
import { Dialog } from "@/app/_ui/Dialog";
import { FormMessage } from "@/app/_ui/FormMessage";
import { WhyField } from "@/app/_ui/field/WhyField";
import { useSend } from "@/app/_ui/useSend";
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
  const { pending, reason, send, errorOf } = useSend({
    save: (data) => removeDuty({ obligationId: id, version, why: String(data.get("why") ?? "") }),
    onSaved: () => tell({ message: `Removed: ${title}.` }),
  });
  return (
    <form noValidate className="grid gap-4" onSubmit={send}>
      <p>
        Remove only what was entered by mistake; mark as done what was done. The audit keeps what it said.
        This cannot be undone here.
      </p>
      <WhyField error={errorOf("why")} />
      <FormMessage kind="problem">{reason}</FormMessage>
      <div>
        <Button type="submit" kind="danger" aria-disabled={pending}>
          Remove from the record
        </Button>
      </div>
    </form>
  );
}
