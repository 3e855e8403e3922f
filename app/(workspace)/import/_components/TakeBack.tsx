"use client";

import { useRouter } from "next/navigation";
import { useState, useTransition } from "react";
import { Button } from "@/app/_ui/Button";
import { Dialog } from "@/app/_ui/Dialog";
import { FormMessage } from "@/app/_ui/FormMessage";
import { takeFileBack } from "@/app/(workspace)/import/actions";

interface Props {
  readonly batchId: string;
  readonly fileName: string;
}

/** Takes a loaded file back, after saying what that does; a refusal is shown with its reason. */
export function TakeBack({ batchId, fileName }: Props) {
  return (
    <Dialog trigger="Take back" title={`Take back ${fileName}`}>
      {(close) => <Question batchId={batchId} close={close} />}
    </Dialog>
  );
}

function Question({ batchId, close }: { readonly batchId: string; readonly close: () => void }) {
  const router = useRouter();
  const [pending, start] = useTransition();
  const [reason, setReason] = useState("");
  const takeBack = () =>
    start(async () => {
      const answer = await takeFileBack({ batchId });
      if (!answer.ok) return setReason(answer.error.reason);
      router.refresh();
      close();
    });
  return (
    <>
      <p>
        What this file added goes, what it changed is as before. It is refused, and nothing is changed, when a
        later file or edit stands on it.
      </p>
      <div className="my-3">
        <FormMessage kind="problem">{reason}</FormMessage>
      </div>
      <div className="flex flex-wrap gap-2">
        <Button kind="danger" onClick={takeBack} disabled={pending}>
          {pending ? "Taking back…" : "Take this file back"}
        </Button>
        <Button onClick={close}>Leave it loaded</Button>
      </div>
    </>
  );
}
