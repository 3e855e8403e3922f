"use client";

import { type FormEvent, useState, useTransition } from "react";
import { Button } from "@/app/_ui/Button";
import { Dialog } from "@/app/_ui/Dialog";
import { FormMessage } from "@/app/_ui/FormMessage";
import { TextareaField } from "@/app/_ui/field/TextareaField";
import { TextField } from "@/app/_ui/field/TextField";
import { SubmitButton } from "@/app/_ui/SubmitButton";
import type { Done } from "@/app/(workspace)/_components/useDone";
import { stepTransferOn } from "@/app/(workspace)/pool/actions";
import type { Refusal } from "@/lib/access/action";
import { stepBack, type TransferStepName, transferSteps } from "@/lib/schema/transferSteps";
import { type SeenTransfer, stepName, transferState } from "@/lib/view/transfer";

interface StepProps {
  readonly transfer: SeenTransfer;
  readonly step: TransferStepName;
  readonly tell: (done: Done) => void;
}

/** What is said after a step, and how it is taken back where that is one step. */
function doneOf({ transfer, step }: Omit<StepProps, "tell">): Done {
  const { to, back } = transferSteps[step];
  const undo = back ? null : stepBack(to);
  const { pieces, number, fromSite, toSite, id } = transfer;
  return {
    message: `${pieces} × ${number}, ${fromSite} to ${toSite}: ${transferState(to).name.toLowerCase()}.`,
    ...(undo === null
      ? {}
      : { undo: () => stepTransferOn({ transferId: id, step: undo, reason: "", bin: "" }) }),
  };
}

function PlainStep({ transfer, step, tell }: StepProps) {
  const [pending, start] = useTransition();
  const run = () =>
    start(async () => {
      const answer = await stepTransferOn({ transferId: transfer.id, step, reason: "", bin: "" });
      tell(answer.ok ? doneOf({ transfer, step }) : { message: answer.error.reason });
    });
  return (
    <Button
      kind={transferSteps[step].back ? "quiet" : "plain"}
      aria-disabled={pending}
      onClick={pending ? () => undefined : run}
    >
      {pending ? "Saving…" : stepName(step)}
    </Button>
  );
}

interface FormProps extends StepProps {
  readonly close: () => void;
}

function StepForm({ transfer, step, tell, close }: FormProps) {
  const [refusal, setRefusal] = useState<Refusal | null>(null);
  const [pending, start] = useTransition();
  const submit = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const data = new FormData(event.currentTarget);
    const text = (name: string) => String(data.get(name) ?? "");
    start(async () => {
      const told = { reason: text("reason"), bin: text("bin") };
      const answer = await stepTransferOn({ transferId: transfer.id, step, ...told });
      if (!answer.ok) return setRefusal(answer.error);
      close();
      tell(doneOf({ transfer, step }));
    });
  };
  return (
    <form onSubmit={submit} noValidate className="grid gap-4">
      <FormMessage kind="problem">{refusal?.reason}</FormMessage>
      {step === "refuse" ? (
        <TextareaField
          label="Why the pieces stay"
          name="reason"
          hint={`${transfer.toSite} reads it.`}
          required
          error={refusal?.fields?.reason}
        />
      ) : (
        <TextField
          label={`Bin at ${transfer.toSite}`}
          name="bin"
          hint="Look at the plates: only pieces of this number and revision, and none damaged on the way."
          required
          error={refusal?.fields?.bin}
        />
      )}
      <div>
        <SubmitButton pending={pending}>{stepName(step)}</SubmitButton>
      </div>
    </form>
  );
}

/** The buttons of a transfer, those the reader's site may press. */
export function TransferActions({ transfer, tell }: Omit<StepProps, "step">) {
  const asks = (step: TransferStepName) => step === "refuse" || step === "receive";
  return (
    <span className="flex flex-wrap gap-2">
      {transfer.may.map((step) =>
        asks(step) ? (
          <Dialog
            key={step}
            trigger={stepName(step)}
            title={`${transfer.pieces} × ${transfer.number}, ${transfer.fromSite} to ${transfer.toSite}`}
          >
            {(close) => <StepForm {...{ transfer, step, tell, close }} />}
          </Dialog>
        ) : (
          <PlainStep key={step} {...{ transfer, step, tell }} />
        ),
      )}
    </span>
  );
}
