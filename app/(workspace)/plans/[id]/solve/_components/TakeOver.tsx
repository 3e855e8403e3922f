"use client";

import { Button } from "@/app/_ui/Button";
import { UndoBar } from "@/app/_ui/UndoBar";
import { useDone } from "@/app/(workspace)/_components/useDone";
import { fillThisBoard } from "@/app/(workspace)/plans/[id]/actions";
import type { PlanChoice } from "@/lib/portfolio/planResult";

interface TakeOverProps {
  readonly planId: string;
  readonly version: number;
  readonly choices: readonly PlanChoice[];
  /** What is placed now, to go back to. */
  readonly before: readonly PlanChoice[];
}

/** Puts the plan that was found onto the board; what is placed of pinned lines stays. */
export function TakeOver({ planId, version, choices, before }: TakeOverProps) {
  const { done, tell, undo, close } = useDone();
  const take = async () => {
    const answer = await fillThisBoard({ planId, version, choices: [...choices], back: false });
    tell(
      answer.ok
        ? {
            message: "The plan found stands on the board.",
            undo: () => fillThisBoard({ ...answer.value, choices: [...before], back: true }),
          }
        : { message: answer.error.reason },
    );
  };
  return (
    <div className="mb-5">
      <Button kind="primary" onClick={take}>
        Put it onto the board
      </Button>
      <UndoBar message={done?.message ?? null} {...(done?.undo ? { onUndo: undo } : {})} onClose={close} />
    </div>
  );
}
