"use client";

import { type FormEvent, useState, useTransition } from "react";
import { Dialog } from "@/app/_ui/Dialog";
import { FormMessage } from "@/app/_ui/FormMessage";
import { DateField } from "@/app/_ui/field/DateField";
import { NumberField } from "@/app/_ui/field/NumberField";
import { SelectField } from "@/app/_ui/field/SelectField";
import { WhyField } from "@/app/_ui/field/WhyField";
import { SubmitButton } from "@/app/_ui/SubmitButton";
import { useTellOfChange } from "@/app/(workspace)/parts/[id]/_components/LotUndo";
import { saveStockLot } from "@/app/(workspace)/parts/[id]/actions";
import type { Refusal } from "@/lib/access/action";
import type { PartLot, StoredLot } from "@/lib/view/partDossier";
import { stockStates } from "@/lib/view/partShelf";

function storedOf({ state, quantity, lastPoweredOn, countedOn }: PartLot): StoredLot {
  return { state, quantity, lastPoweredOn, countedOn };
}

function wantedOf(form: HTMLFormElement): StoredLot {
  const data = new FormData(form);
  const text = (name: string) => String(data.get(name) ?? "").trim();
  return {
    state: text("state") as StoredLot["state"],
    quantity: text("quantity") === "" ? null : Number(text("quantity")),
    lastPoweredOn: text("lastPoweredOn") || null,
    countedOn: text("countedOn") || null,
  };
}

interface LotFormProps {
  readonly lot: PartLot;
  readonly onDone: (wanted: StoredLot) => void;
}

function LotForm({ lot, onDone }: LotFormProps) {
  const [refusal, setRefusal] = useState<Refusal | null>(null);
  const [pending, start] = useTransition();
  const submit = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const wanted = wantedOf(event.currentTarget);
    const why = String(new FormData(event.currentTarget).get("why") ?? "");
    start(async () => {
      const answer = await saveStockLot({ lotId: lot.id, seen: storedOf(lot), wanted, why });
      if (answer.ok) onDone(wanted);
      else setRefusal(answer.error);
    });
  };
  const problem = (name: keyof StoredLot) => refusal?.fields?.[`wanted.${name}`] ?? refusal?.fields?.[name];
  return (
    <form onSubmit={submit} noValidate className="grid gap-4">
      <FormMessage kind="problem">{refusal?.reason}</FormMessage>
      <SelectField
        label="State"
        name="state"
        required
        choices={stockStates}
        defaultValue={lot.state}
        error={problem("state")}
      />
      <NumberField
        label="Pieces in this bin"
        name="quantity"
        hint="Leave empty when nobody counted."
        min={0}
        step={1}
        defaultValue={lot.quantity ?? ""}
        error={problem("quantity")}
      />
      <DateField
        label="Last powered on"
        name="lastPoweredOn"
        defaultValue={lot.lastPoweredOn ?? ""}
        error={problem("lastPoweredOn")}
      />
      <DateField
        label="Counted on"
        name="countedOn"
        defaultValue={lot.countedOn ?? ""}
        error={problem("countedOn")}
      />
      <WhyField error={refusal?.fields?.why} />
      <div>
        <SubmitButton pending={pending}>Save</SubmitButton>
      </div>
    </form>
  );
}

/** Changes one lot on the shelf; `LotUndo` above offers to take it back. */
export function LotDialog({ lot }: { readonly lot: PartLot }) {
  const tell = useTellOfChange();
  const name = `${lot.siteCode} ${lot.bin}`;
  return (
    <Dialog trigger={`Change ${lot.bin}`} kind="quiet" title={`Stock in ${name}`}>
      {(close) => (
        <LotForm
          lot={lot}
          onDone={(after) => {
            close();
            tell({ lotId: lot.id, name, before: storedOf(lot), after });
          }}
        />
      )}
    </Dialog>
  );
}
