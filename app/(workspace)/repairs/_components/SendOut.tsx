"use client";

import { useState } from "react";
import { orOffline } from "@/app/_ui/draft/orOffline";
import { EntryForm } from "@/app/_ui/EntryForm";
import { DateField } from "@/app/_ui/field/DateField";
import { SelectField } from "@/app/_ui/field/SelectField";
import { TextField } from "@/app/_ui/field/TextField";
import { UndoBar } from "@/app/_ui/UndoBar";
import { useDone } from "@/app/(workspace)/_components/useDone";
import { OutFields } from "@/app/(workspace)/repairs/_components/OutFields";
import { sendThisUnit, takeThisRepairBack } from "@/app/(workspace)/repairs/actions";
import type { SendableLot } from "@/lib/view/repair";

interface SendOutProps {
  readonly sites: readonly { readonly id: string; readonly code: string; readonly name: string }[];
  readonly lots: readonly SendableLot[];
  readonly today: string;
}

/** Sends a unit to a repairer, out of a lot or from the machine. */
export function SendOut({ sites, lots, today }: SendOutProps) {
  const { done, tell, undo, close } = useDone();
  const [lotId, setLotId] = useState("");
  const [sent, setSent] = useState(0);
  return (
    <>
      <EntryForm
        key={sent}
        submit="Send it out"
        save={(text) =>
          orOffline(
            sendThisUnit({
              ...{ lotId, siteId: text("siteId"), plate: text("plate"), serial: text("serial") },
              ...{ reference: text("reference"), sentOn: text("sentOn"), dueOn: text("dueOn") },
              ...{ repairer: text("repairer"), fault: text("fault") },
            }),
          )
        }
        onSaved={({ orderId, version, reference }) => {
          setLotId("");
          setSent(sent + 1);
          tell({
            message: `${reference} sent out.`,
            undo: () => takeThisRepairBack({ orderId, version }),
          });
        }}
      >
        {(errorOf) => (
          <div className="grid gap-4 sm:grid-cols-2 lg:grid-cols-4">
            <SelectField
              name="lotId"
              label="Taken from"
              empty="No recorded lot"
              choices={lots.map(({ id, words }) => ({ value: id, label: words }))}
              value={lotId}
              onChange={({ target }) => setLotId(target.value)}
              error={errorOf("lotId")}
            />
            {lotId === "" ? (
              <>
                <SelectField
                  name="siteId"
                  label="Site"
                  required
                  empty="Choose a site"
                  choices={sites.map(({ id, code, name }) => ({ value: id, label: `${code} ${name}` }))}
                  error={errorOf("siteId")}
                />
                <TextField name="plate" label="Number on the plate" required error={errorOf("plate")} />
              </>
            ) : null}
            <TextField name="serial" label="Serial" maxLength={60} error={errorOf("serial")} />
            <OutFields errorOf={errorOf} />
            <DateField
              name="sentOn"
              label="Sent on"
              required
              defaultValue={today}
              error={errorOf("sentOn")}
            />
            <TextField
              name="reference"
              label="Order number"
              hint="Empty takes one of its own."
              maxLength={40}
              error={errorOf("reference")}
            />
          </div>
        )}
      </EntryForm>
      <UndoBar message={done?.message ?? null} {...(done?.undo ? { onUndo: undo } : {})} onClose={close} />
    </>
  );
}
