"use client";

import { Dialog } from "@/app/_ui/Dialog";
import { orOffline } from "@/app/_ui/draft/orOffline";
import { EntryForm } from "@/app/_ui/EntryForm";
import { DateField } from "@/app/_ui/field/DateField";
import { SelectField } from "@/app/_ui/field/SelectField";
import { TextField } from "@/app/_ui/field/TextField";
import type { Done } from "@/app/(workspace)/_components/useDone";
import { receiveThisUnit, takeThisRepairBack } from "@/app/(workspace)/repairs/actions";
import type { OutOrder } from "@/lib/view/repair";

const FINDINGS = [
  { value: "repaired", label: "Repaired" },
  { value: "no fault found", label: "No fault found" },
  { value: "beyond repair", label: "Beyond repair" },
] as const;

const BOOKED = [
  { value: "usable", label: "Usable: it ran under load" },
  { value: "unproven", label: "Unproven: not tested" },
  { value: "beyond_repair", label: "Beyond repair, kept for parts" },
  { value: "none", label: "Nothing: scrapped or kept by the repairer" },
] as const;

type Finding = (typeof FINDINGS)[number]["value"];
type Booked = (typeof BOOKED)[number]["value"];

interface ReceiveUnitProps {
  readonly order: OutOrder;
  readonly today: string;
  readonly tell: (done: Done) => void;
}

/** Takes a unit back from its repairer and books it into a bin. */
export function ReceiveUnit({ order, today, tell }: ReceiveUnitProps) {
  const { id: orderId, version, reference } = order;
  return (
    <Dialog trigger={`Receive ${reference}`} title={`${reference} is back`}>
      {(close) => (
        <EntryForm
          submit="Book it"
          save={(text) =>
            orOffline(
              receiveThisUnit({
                ...{ orderId, version, returnedOn: text("returnedOn"), bin: text("bin") },
                finding: text("finding") as Finding,
                bookAs: text("bookAs") as Booked,
                ...{ revision: text("revision"), cost: text("cost"), costCurrency: text("costCurrency") },
                ...{ warrantyUntilOn: text("warrantyUntilOn"), note: text("note") },
              }),
            )
          }
          onSaved={(saved) => {
            close();
            const back = () => takeThisRepairBack({ orderId, version: saved.version });
            tell({ message: `${reference} received.`, undo: back });
          }}
        >
          {(errorOf) => (
            <div className="grid gap-4 sm:grid-cols-2">
              <DateField
                name="returnedOn"
                label="Back on"
                required
                defaultValue={today}
                error={errorOf("returnedOn")}
              />
              <SelectField
                name="finding"
                label="Finding"
                required
                empty="Choose what was found"
                choices={FINDINGS}
                error={errorOf("finding")}
              />
              <SelectField
                name="bookAs"
                label="Book it as"
                required
                empty="Choose"
                choices={BOOKED}
                error={errorOf("bookAs")}
              />
              <TextField name="bin" label="Bin it lies in" error={errorOf("bin")} />
              <TextField name="revision" label="Revision on its plate" error={errorOf("revision")} />
              <TextField name="cost" label="Cost" error={errorOf("cost")} />
              <TextField
                name="costCurrency"
                label="Currency"
                hint="As EUR"
                maxLength={3}
                error={errorOf("costCurrency")}
              />
              <DateField name="warrantyUntilOn" label="Warranty until" error={errorOf("warrantyUntilOn")} />
              <TextField name="note" label="What was done" error={errorOf("note")} />
            </div>
          )}
        </EntryForm>
      )}
    </Dialog>
  );
}
