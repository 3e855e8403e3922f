"use client";

import { useRouter } from "next/navigation";
import { useState, useTransition } from "react";
import { Button } from "@/app/_ui/Button";
import { FormMessage } from "@/app/_ui/FormMessage";
import { Section } from "@/app/_ui/Section";
import { UndoBar } from "@/app/_ui/UndoBar";
import { useDone } from "@/app/(workspace)/_components/useDone";
import {
  approveThisCount,
  dropThisCount,
  postThisCount,
  takeThisCountBack,
} from "@/app/(workspace)/counts/actions";
import type { Refusal } from "@/lib/access/action";
import type { Result } from "@/lib/kernel/result";
import type { CountSheet, VarianceSheet } from "@/lib/view/count";
import { money } from "@/lib/view/format";
import { day } from "@/lib/view/time";

interface SettleProps {
  readonly count: CountSheet;
  readonly variance: VarianceSheet;
  /** The lines as they stand on this page. */
  readonly seen: number;
}

interface Step {
  readonly run: () => Promise<Result<unknown, Refusal>>;
  readonly message: string;
  readonly undo?: () => Promise<Result<unknown, Refusal>>;
}

/** Approves, posts or takes back; says why not. */
export function Settle({ count, variance, seen }: SettleProps) {
  const router = useRouter();
  const { id: countId } = count;
  const { done, tell, undo, close } = useDone();
  const [problem, setProblem] = useState<string | null>(null);
  const [pending, start] = useTransition();
  const take = ({ run, ...said }: Step) =>
    start(async () => {
      const made = await run();
      setProblem(made.ok ? null : made.error.reason);
      if (made.ok) tell(said);
    });
  const back = () => takeThisCountBack({ countId });
  const giveUp = () =>
    start(async () => {
      const made = await dropThisCount({ countId });
      if (made.ok) router.push("/counts");
      else setProblem(made.error.reason);
    });
  return (
    <Section title={count.postedOn === null ? "Post the count" : "Posted"}>
      <FormMessage kind="problem">{problem}</FormMessage>
      {count.postedOn === null ? (
        <>
          <p className="measure mb-3">
            {approvalWords(count, variance)} Posting books all lines as one batch; it can be taken back while
            nobody moved the lots since.
          </p>
          <div className="flex flex-wrap gap-2">
            {variance.needsSecond && count.approvedOn === null ? (
              <Button
                onClick={() =>
                  take({
                    run: () => approveThisCount({ countId, seen }),
                    message: `Differences of ${count.reference} approved.`,
                  })
                }
                aria-disabled={pending}
              >
                Approve the differences
              </Button>
            ) : null}
            <Button
              kind="primary"
              aria-disabled={pending}
              onClick={() =>
                take({
                  run: () => postThisCount({ countId, seen }),
                  message: `${count.reference} posted.`,
                  undo: back,
                })
              }
            >
              Post the count
            </Button>
            {count.lines.every(({ entry }) => entry.found === "") ? (
              <Button kind="quiet" onClick={giveUp}>
                Give the count up
              </Button>
            ) : null}
          </div>
        </>
      ) : (
        <Button
          aria-disabled={pending}
          onClick={() =>
            take({ run: back, message: `${count.reference} taken back; the sheet is open again.` })
          }
        >
          Take the posting back
        </Button>
      )}
      <UndoBar message={done?.message ?? null} {...(done?.undo ? { onUndo: undo } : {})} onClose={close} />
    </Section>
  );
}

function approvalWords({ approvedOn, approvedBy, limitEuro }: CountSheet, { needsSecond }: VarianceSheet) {
  if (approvedOn !== null) return `Approved on ${day(approvedOn)} by ${approvedBy}.`;
  return needsSecond
    ? `The differences are worth more than ${money(limitEuro)} together, or cannot be valued: somebody who did not count approves first.`
    : `The differences are worth no more than ${money(limitEuro)} together: no second person is needed.`;
}
