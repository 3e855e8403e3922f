"use client";

import { Dialog } from "@/app/_ui/Dialog";
import { orOffline } from "@/app/_ui/draft/orOffline";
import { EntryForm } from "@/app/_ui/EntryForm";
import type { Done } from "@/app/(workspace)/_components/useDone";
import { OutFields } from "@/app/(workspace)/repairs/_components/OutFields";
import { saveThisRepair, takeThisRepairBack } from "@/app/(workspace)/repairs/actions";
import type { OutOrder } from "@/lib/view/repair";

interface ChangeRepairProps {
  readonly order: OutOrder;
  readonly tell: (done: Done) => void;
}

/** Corrects a repair under way: who has it, what was wrong, when it is promised; or takes a sending back. */
export function ChangeRepair({ order, tell }: ChangeRepairProps) {
  const { id: orderId, version, reference, repairer, fault, dueOn } = order;
  const before = { repairer: repairer ?? "", fault: fault ?? "", dueOn: dueOn ?? "" };
  return (
    <>
      <Dialog trigger={`Change ${reference}`} kind="quiet" title={`Repair ${reference}`}>
        {(close) => (
          <EntryForm
            submit="Save"
            save={(text) =>
              orOffline(
                saveThisRepair({
                  ...{ orderId, version, repairer: text("repairer"), fault: text("fault") },
                  dueOn: text("dueOn"),
                }),
              )
            }
            onSaved={(saved) => {
              close();
              const back = () => saveThisRepair({ orderId, version: saved.version, ...before });
              tell({ message: `${reference} changed.`, undo: back });
            }}
          >
            {(errorOf) => <OutFields errorOf={errorOf} given={before} />}
          </EntryForm>
        )}
      </Dialog>
      {order.mayUndo ? (
        <Dialog trigger={`Take ${reference} back`} kind="quiet" title={`Was ${reference} not sent?`}>
          {(close) => (
            <EntryForm
              submit="It was not sent"
              save={() => orOffline(takeThisRepairBack({ orderId, version }))}
              onSaved={() => {
                close();
                tell({ message: `${reference} taken back; the unit lies where it was.` });
              }}
            >
              {() => <p>The order is removed and the piece is put back into its bin.</p>}
            </EntryForm>
          )}
        </Dialog>
      ) : null}
    </>
  );
}
