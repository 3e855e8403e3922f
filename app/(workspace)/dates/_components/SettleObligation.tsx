import { useTransition } from "react";
import { Button } from "@/app/_ui/Button";
import { Dialog } from "@/app/_ui/Dialog";
import { FormMessage } from "@/app/_ui/FormMessage";
import { DateField } from "@/app/_ui/field/DateField";
import { WhyField } from "@/app/_ui/field/WhyField";
import { SubmitButton } from "@/app/_ui/SubmitButton";
import { useSend } from "@/app/_ui/useSend";
import type { Done } from "@/app/(workspace)/_components/useDone";
import { settleDuty } from "@/app/(workspace)/dates/actions";
import type { ObligationMark } from "@/lib/data/obligationChange";
import type { IsoDate } from "@/lib/kernel/isoDate";
import type { Obligation } from "@/lib/view/obligation";
import { day } from "@/lib/view/time";

interface SettleObligationProps {
  readonly duty: Obligation;
  readonly today: IsoDate;
  readonly tell: (done: Done) => void;
}

/** Marks a duty done on a day, or opens it again. */
export function SettleObligation(props: SettleObligationProps) {
  const { duty } = props;
  if (duty.doneOn !== null) return <OpenAgain {...props} doneOn={duty.doneOn} />;
  return (
    <Dialog trigger="Mark done" title={`Done: ${duty.title}`}>
      {(close) => <DoneForm {...props} onDone={close} />}
    </Dialog>
  );
}

function OpenAgain({ duty, tell, doneOn }: SettleObligationProps & { readonly doneOn: IsoDate }) {
  const [pending, start] = useTransition();
  const send = () =>
    start(async () => {
      const answer = await settleDuty({ obligationId: duty.id, version: duty.version, doneOn: null });
      tell(
        answer.ok
          ? { message: `Open again: ${duty.title}.`, undo: () => settleDuty({ ...answer.value, doneOn }) }
          : { message: answer.error.reason },
      );
    });
  return (
    <Button aria-disabled={pending} onClick={() => (pending ? undefined : send())}>
      Open again
    </Button>
  );
}

function DoneForm({ duty, today, tell, onDone }: SettleObligationProps & { readonly onDone: () => void }) {
  const said = (data: FormData) => ({
    doneOn: String(data.get("doneOn") ?? ""),
    why: String(data.get("why") ?? ""),
  });
  const { pending, reason, send, errorOf } = useSend<ObligationMark>({
    save: (data) => settleDuty({ obligationId: duty.id, version: duty.version, ...said(data) }),
    onSaved: (saved, data) => {
      onDone();
      tell({
        message: `Done on ${day(said(data).doneOn)}: ${duty.title}.`,
        undo: () => settleDuty({ ...saved, doneOn: null }),
      });
    },
  });
  return (
    <form noValidate className="grid gap-4" onSubmit={send}>
      <p className="text-ink-2">
        Only when a competent person has confirmed it. The audit keeps who marked it and when.
      </p>
      <DateField
        label="Done on"
        name="doneOn"
        required
        defaultValue={today}
        max={today}
        error={errorOf("doneOn")}
      />
      <WhyField error={errorOf("why")} />
      <FormMessage kind="problem">{reason}</FormMessage>
      <div>
        <SubmitButton pending={pending}>Mark as done</SubmitButton>
      </div>
    </form>
  );
}
