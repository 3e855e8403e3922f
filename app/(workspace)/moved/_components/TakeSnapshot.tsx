"use client";

import { useRouter } from "next/navigation";
import { useState, useTransition } from "react";
import { Button } from "@/app/_ui/Button";
import { FormMessage } from "@/app/_ui/FormMessage";
import { takeThisSnapshot } from "@/app/(workspace)/moved/actions";
import { day } from "@/lib/view/time";

/** Takes the snapshot of the day looked at. */
export function TakeSnapshot({ asOf }: { readonly asOf: string }) {
  const router = useRouter();
  const [pending, start] = useTransition();
  const [said, setSaid] = useState<{ readonly done: boolean; readonly text: string } | null>(null);
  const press = () => {
    if (pending) return;
    start(async () => {
      const answer = await takeThisSnapshot({ asOf });
      if (!answer.ok) return setSaid({ done: false, text: answer.error.reason });
      const text = answer.value.isNew
        ? `Snapshot of ${day(asOf)} taken.`
        : `There is a snapshot of ${day(asOf)} already; it stands as it was taken.`;
      setSaid({ done: true, text });
      router.refresh();
    });
  };
  return (
    <div className="grid justify-items-start gap-2">
      <Button kind="primary" aria-disabled={pending} onClick={press}>
        {pending ? "Taking it…" : "Take a snapshot now"}
      </Button>
      <FormMessage kind="done">{said?.done ? said.text : null}</FormMessage>
      <FormMessage kind="problem">{said && !said.done ? said.text : null}</FormMessage>
    </div>
  );
}
