"use client";

import { useRouter, useSearchParams } from "next/navigation";
import { useState, useTransition } from "react";
import { Button } from "@/app/_ui/Button";
import { Dialog } from "@/app/_ui/Dialog";
import { FormMessage } from "@/app/_ui/FormMessage";
import { TextField } from "@/app/_ui/field/TextField";
import { decideThisPlan, deleteThisPlan, moveThisPlan } from "@/app/(workspace)/plans/actions";
import type { Refusal } from "@/lib/access/action";
import type { Result } from "@/lib/kernel/result";
import { keepAsOf } from "@/lib/view/keepAsOf";
import type { PlanStatus } from "@/lib/view/plan";

interface PlanStepsProps {
  readonly id: string;
  readonly version: number;
  readonly status: PlanStatus;
  readonly name: string;
  /** A project was started from the plan, so its decision stands. */
  readonly started: boolean;
  readonly mayPlan: boolean;
  readonly mayApprove: boolean;
}

type Target = "put_forward" | "draft" | "funded" | "declined";

interface Step {
  readonly by: "planner" | "approver";
  readonly to: Target;
  readonly text: string;
}

const STEPS: Readonly<Record<PlanStatus, readonly Step[]>> = {
  draft: [{ by: "planner", to: "put_forward", text: "Put forward" }],
  put_forward: [
    { by: "planner", to: "draft", text: "Take back to draft" },
    { by: "approver", to: "funded", text: "Fund the plan" },
    { by: "approver", to: "declined", text: "Decline the plan" },
  ],
  funded: [{ by: "approver", to: "put_forward", text: "Take the decision back" }],
  declined: [{ by: "approver", to: "put_forward", text: "Take the decision back" }],
};

function ask(
  { by, to }: Step,
  plan: { planId: string; version: number; why: string },
): Promise<Result<null, Refusal>> {
  if (by === "planner" && (to === "draft" || to === "put_forward")) return moveThisPlan({ ...plan, to });
  if (to === "draft") throw new Error("only a planner takes a plan back to a draft");
  return decideThisPlan({ ...plan, to });
}

/** The next steps of a plan that the person may take; each has its way back until a project is started. */
export function PlanSteps({ id, version, status, name, started, mayPlan, mayApprove }: PlanStepsProps) {
  const router = useRouter();
  const asOf = useSearchParams().get("asOf");
  const [pending, start] = useTransition();
  const [problem, setProblem] = useState("");
  const [why, setWhy] = useState("");
  const run = (change: () => Promise<Result<null, Refusal>>, then: () => void) => () =>
    start(async () => {
      const done = await change();
      setProblem(done.ok ? "" : done.error.reason);
      if (done.ok) {
        setWhy("");
        then();
      }
    });
  const plan = { planId: id, version };
  const may = { planner: mayPlan, approver: mayApprove };
  const steps = STEPS[status].filter((step) => may[step.by] && !started);
  return (
    <div className="no-print mb-5">
      {steps.length === 0 ? null : (
        <div className="mb-3 max-w-xl">
          <TextField
            label="Why"
            name="why"
            hint="Stands beside the next step for whoever asks later."
            maxLength={500}
            value={why}
            onChange={(event) => setWhy(event.target.value)}
          />
        </div>
      )}
      <div className="flex flex-wrap gap-2">
        {steps.map((step) => (
          <Button
            key={step.text}
            aria-disabled={pending}
            onClick={run(() => ask(step, { ...plan, why }), router.refresh)}
          >
            {step.text}
          </Button>
        ))}
        {mayPlan && status === "draft" ? (
          <Dialog trigger="Throw away" kind="quiet" title={`Throw away “${name}”?`}>
            {(close) => (
              <>
                <p>The draft and its lines are gone for good; the ranking stays and can be cut again.</p>
                <div className="mt-4 flex gap-2">
                  <Button
                    kind="danger"
                    aria-disabled={pending}
                    onClick={run(
                      () => deleteThisPlan(plan),
                      () => router.push(keepAsOf("/plans", asOf)),
                    )}
                  >
                    Throw the draft away
                  </Button>
                  <Button onClick={close}>Keep it</Button>
                </div>
              </>
            )}
          </Dialog>
        ) : null}
      </div>
      <FormMessage kind="problem">{problem}</FormMessage>
    </div>
  );
}
