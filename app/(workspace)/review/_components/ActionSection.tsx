"use client";

import { useOptimistic, useTransition } from "react";
import { Dialog } from "@/app/_ui/Dialog";
import { RowTable } from "@/app/_ui/RowTable";
import { Section } from "@/app/_ui/Section";
import { ActionForm } from "@/app/(workspace)/review/_components/ActionForm";
import { ActionRow } from "@/app/(workspace)/review/_components/ActionRow";
import type { Desk } from "@/app/(workspace)/review/_components/desk";
import { settleThisAction } from "@/app/(workspace)/review/actions";
import { byDue, isLate, type ReviewAction } from "@/lib/view/reviewRecord";

interface ActionSectionProps {
  readonly desk: Desk;
  readonly actions: readonly ReviewAction[];
}

export type Settled = Pick<ReviewAction, "state" | "reason">;

/** Who does what until when: the late ones on top, open ones carried over, those settled since the last review. */
export function ActionSection({ desk, actions }: ActionSectionProps) {
  const [, start] = useTransition();
  const [shown, show] = useOptimistic(actions, settledIn);
  const settle = (action: ReviewAction, to: Settled) =>
    start(async () => {
      show({ ...action, ...to, settledOn: to.state === "open" ? null : desk.asOf });
      const answer = await settleThisAction({ actionId: action.id, version: action.version, ...to });
      const { state, reason } = action;
      desk.tell(
        answer.ok
          ? {
              message: `${WORDS[to.state]}: ${action.text}`,
              undo: () => settleThisAction({ ...answer.value, state, reason }),
            }
          : { message: answer.error.reason },
      );
    });
  const late = shown.filter((action) => isLate(action, desk.asOf)).length;
  return (
    <Section
      title="Actions"
      id="actions"
      lead={`Open ones stay until they are done or dropped, from review to review. ${late === 0 ? "None is late." : `${late} late, on top.`}`}
      actions={
        desk.mayAct ? (
          <Dialog trigger="Add an action" title="Add an action">
            {(close) => (
              <ActionForm desk={desk} about={{ partId: null, lineId: null, text: "" }} onDone={close} />
            )}
          </Dialog>
        ) : null
      }
    >
      {shown.length === 0 ? (
        <p>No action is open at this site. Add one here, or from any row with the key a.</p>
      ) : (
        <RowTable
          caption="Actions"
          heads={["Action", "About", "Who", "Due", "State", { text: "Change", print: false }]}
        >
          {shown.map((action) => (
            <ActionRow key={action.id} {...{ action, desk, settle }} />
          ))}
        </RowTable>
      )}
    </Section>
  );
}

const WORDS = { open: "Open again", done: "Done", dropped: "Dropped" } as const;

function settledIn(actions: readonly ReviewAction[], settled: ReviewAction): readonly ReviewAction[] {
  return actions.map((action) => (action.id === settled.id ? settled : action)).sort(byDue);
}
