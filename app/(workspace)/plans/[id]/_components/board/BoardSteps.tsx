"use client";

import { useRouter } from "next/navigation";
import { useState, useTransition } from "react";
import { Button } from "@/app/_ui/Button";
import { Dialog } from "@/app/_ui/Dialog";
import { FormMessage } from "@/app/_ui/FormMessage";
import { fillThisByRanking, startNextIssue, submitThisBoard } from "@/app/(workspace)/plans/[id]/actions";
import { decideThisPlan, deleteThisPlan } from "@/app/(workspace)/plans/actions";
import type { Refusal } from "@/lib/access/action";
import type { Result } from "@/lib/kernel/result";
import type { BoardPage } from "@/lib/view/planBoard";

interface BoardStepsProps {
  readonly page: Pick<BoardPage, "id" | "version" | "status">;
  readonly broken: number;
  readonly mayPlan: boolean;
  readonly mayApprove: boolean;
}

/** What can be done to the plan as a whole, by how it stands. */
export function BoardSteps({ page, broken, mayPlan, mayApprove }: BoardStepsProps) {
  const { id: planId, version, status } = page;
  const router = useRouter();
  const [pending, start] = useTransition();
  const [refused, setRefused] = useState<string | null>(null);
  const run = <T,>(
    step: () => Promise<Result<T, Refusal>>,
    then: (value: T) => void = () => router.refresh(),
  ) =>
    start(async () => {
      const answer = await step();
      setRefused(answer.ok ? null : answer.error.reason);
      if (answer.ok) then(answer.value);
      else router.refresh();
    });
  const which = { planId, version };
  return (
    <div className="no-print mb-5 grid gap-2">
      <div className="flex flex-wrap items-center gap-2">
        {status === "draft" && mayPlan ? (
          <>
            <Button aria-disabled={pending} onClick={() => run(() => fillThisByRanking(which))}>
              Fill by the ranking
            </Button>
            <Submit broken={broken} submit={() => run(() => submitThisBoard(which))} />
            <Dialog trigger="Throw away" kind="quiet" title="Throw the draft away">
              {() => (
                <Button
                  kind="danger"
                  onClick={() =>
                    run(
                      () => deleteThisPlan(which),
                      () => router.push("/plans"),
                    )
                  }
                >
                  Throw the draft away
                </Button>
              )}
            </Dialog>
          </>
        ) : null}
        {status !== "draft" && mayPlan ? (
          <Button
            aria-disabled={pending}
            onClick={() =>
              run(
                () => startNextIssue(which),
                (mark) => router.push(`/plans/${mark.planId}`),
              )
            }
          >
            Start the next issue
          </Button>
        ) : null}
        {status === "put_forward" && mayApprove ? (
          <>
            <Button kind="primary" onClick={() => run(() => decideThisPlan({ ...which, to: "funded" }))}>
              Fund the plan
            </Button>
            <Button onClick={() => run(() => decideThisPlan({ ...which, to: "declined" }))}>
              Decline it
            </Button>
          </>
        ) : null}
        {pending ? <span role="status">Working…</span> : null}
      </div>
      <FormMessage kind="problem">{refused}</FormMessage>
    </div>
  );
}

function Submit({ broken, submit }: { readonly broken: number; readonly submit: () => void }) {
  return (
    <Dialog trigger="Put forward" kind="primary" title="Put the plan forward">
      {(close) => (
        <div className="grid gap-4">
          <p className="measure">
            What the plan shows now is kept as it stands: its choices, figures, inputs, assumptions and the
            day of the data. It cannot be changed afterwards; a next issue starts from it.
          </p>
          {broken > 0 ? (
            <p className="measure border-worse border-l-4 pl-3">
              {broken === 1 ? "One limit is" : `${broken} limits are`} broken and will stand in the request.
            </p>
          ) : null}
          <div>
            <Button
              kind="primary"
              onClick={() => {
                close();
                submit();
              }}
            >
              Put it forward as it stands
            </Button>
          </div>
        </div>
      )}
    </Dialog>
  );
}
