"use client";

import { Button } from "@/app/_ui/Button";
import { Dialog } from "@/app/_ui/Dialog";
import { EntryForm } from "@/app/_ui/EntryForm";
import { TextareaField } from "@/app/_ui/field/TextareaField";
import type { useProjectChange } from "@/app/(workspace)/projects/[code]/_components/useProjectChange";
import { decideThisChange, withdrawThisChange } from "@/app/(workspace)/projects/[code]/money/actions";
import type { ProjectChange } from "@/lib/view/project";

interface DecideChangeProps {
  readonly projectId: string;
  readonly one: ProjectChange;
  readonly change: ReturnType<typeof useProjectChange>;
  readonly mayWrite: boolean;
  readonly mayApprove: boolean;
}

/** Approves, declines, opens again or takes back a change of the budget, as the person may. */
export function DecideChange({ projectId, one, change, mayWrite, mayApprove }: DecideChangeProps) {
  const { id: changeId, version, number, state } = one;
  const decide = (wanted: ProjectChange["state"], why = "") =>
    decideThisChange({ projectId, changeId, version, state: wanted, why });
  const open = (from: number) =>
    decideThisChange({ projectId, changeId, version: from, state: "asked", why: "" });
  if (state !== "asked")
    return mayApprove ? (
      <Button
        kind="quiet"
        aria-label={`Open the decision on change ${number} again`}
        aria-disabled={change.pending}
        onClick={() => change.run({ run: () => decide("asked"), done: `Change ${number} is open again.` })}
      >
        Open again
      </Button>
    ) : null;
  return (
    <div className="flex flex-wrap gap-2">
      {mayApprove ? (
        <>
          <Button
            aria-label={`Approve change ${number}`}
            aria-disabled={change.pending}
            onClick={() =>
              change.run({
                run: () => decide("approved"),
                done: `Change ${number} approved.`,
                undo: (made) => open(made.version),
              })
            }
          >
            Approve
          </Button>
          <Dialog trigger={`Decline change ${number}`} kind="quiet" title={`Decline change ${number}`}>
            {(close) => (
              <EntryForm
                submit="Decline it"
                save={(text) => decide("declined", text("why"))}
                onSaved={({ version: made }) => {
                  change.tell({ message: `Change ${number} declined.`, undo: () => open(made) });
                  close();
                }}
              >
                {(errorOf) => (
                  <TextareaField
                    name="why"
                    label="Why"
                    required
                    rows={3}
                    maxLength={400}
                    error={errorOf("why")}
                  />
                )}
              </EntryForm>
            )}
          </Dialog>
        </>
      ) : null}
      {mayWrite ? (
        <Button
          kind="quiet"
          aria-label={`Take change ${number} back`}
          aria-disabled={change.pending}
          onClick={() =>
            change.run({
              run: () => withdrawThisChange({ projectId, changeId, version }),
              done: `Change ${number} taken back.`,
            })
          }
        >
          Take back
        </Button>
      ) : null}
    </div>
  );
}
