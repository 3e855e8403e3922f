"use client";

import { useRouter } from "next/navigation";
import { useState, useTransition } from "react";
import { Button } from "@/app/_ui/Button";
import { Dialog } from "@/app/_ui/Dialog";
import { FormMessage } from "@/app/_ui/FormMessage";
import { takeThisNoticeBack } from "@/app/(workspace)/notices/actions";

/** Takes a notice back, after a second word: the dates before it hold again. */
export function TakeBackNotice({ noticeId }: { readonly noticeId: string }) {
  const router = useRouter();
  const [pending, start] = useTransition();
  const [problem, setProblem] = useState<string | null>(null);
  return (
    <Dialog trigger="Take it back" title="Take this notice back">
      {(close) => (
        <div className="grid gap-3">
          <p>
            The dates on record before it hold again, and successors it named are dropped. It stays in the
            list.
          </p>
          <FormMessage kind="problem">{problem}</FormMessage>
          <div>
            <Button
              kind="danger"
              aria-disabled={pending}
              onClick={() =>
                start(async () => {
                  const answer = await takeThisNoticeBack({ noticeId });
                  if (!answer.ok) return setProblem(answer.error.reason);
                  close();
                  router.refresh();
                })
              }
            >
              {pending ? "Taking back…" : "Take it back"}
            </Button>
          </div>
        </div>
      )}
    </Dialog>
  );
}
