"use client";

import type { FormEvent } from "react";
import { DateField } from "@/app/_ui/field/DateField";
import { SelectField } from "@/app/_ui/field/SelectField";
import { TextField } from "@/app/_ui/field/TextField";
import { SubmitButton } from "@/app/_ui/SubmitButton";
import type { useProjectChange } from "@/app/(workspace)/projects/[code]/_components/useProjectChange";
import { addThisCost, removeThisCost } from "@/app/(workspace)/projects/[code]/money/actions";
import { placesOf } from "@/lib/kernel/currency";
import type { CostClass } from "@/lib/schema/costClass";
import { costClassChoices } from "@/lib/view/costClass";
import { exactMoney } from "@/lib/view/format";
import type { RateTable } from "@/lib/view/projectRates";

interface CostFormProps {
  readonly projectId: string;
  readonly currency: string;
  readonly asOf: string;
  readonly rates: RateTable;
  readonly change: ReturnType<typeof useProjectChange>;
}

const KINDS = [
  { value: "committed", label: "Ordered" },
  { value: "actual", label: "Paid" },
] as const;

/** Enters money ordered or paid. */
export function CostForm({ projectId, currency, asOf, rates, change }: CostFormProps) {
  const fields = change.refusal?.fields;
  const sample = (610_000).toFixed(placesOf(currency));
  const known = ["EUR", ...rates.budget.map((rate) => rate.currency)];
  const others = [...new Set(known)].filter((code) => code !== currency);
  const send = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const form = event.currentTarget;
    const data = new FormData(form);
    const text = (name: string) => String(data.get(name) ?? "").trim();
    const kind = text("kind") === "actual" ? ("actual" as const) : ("committed" as const);
    const entry = { kind, amount: text("amount"), spentOn: text("spentOn"), text: text("text") };
    const reference = text("reference");
    const rest = {
      currency: text("currency") || null,
      costClass: (text("costClass") || null) as CostClass | null,
      orderReference: text("orderReference") || null,
    };
    change.run({
      run: () => addThisCost({ projectId, ...entry, ...rest, reference }),
      done: `${reference} entered.`,
      undo: ({ id: costId }) => removeThisCost({ projectId, costId }),
      after: () => form.reset(),
    });
  };
  return (
    <form
      onSubmit={send}
      noValidate
      aria-label="Enter money ordered or paid"
      className="no-print mt-5 grid gap-4 sm:grid-cols-3"
    >
      <SelectField name="kind" label="Kind" required choices={KINDS} />
      <TextField
        name="amount"
        label="Amount"
        hint={`Such as ${exactMoney(sample, currency)}, written ${sample}`}
        required
        error={fields?.amount}
      />
      <SelectField
        name="currency"
        label="Currency"
        required
        choices={[currency, ...others].map((value) => ({ value, label: value }))}
        error={fields?.currency}
      />
      <DateField name="spentOn" label="Day" required defaultValue={asOf} error={fields?.spentOn} />
      <TextField name="text" label="For" required maxLength={200} error={fields?.text} />
      <TextField
        name="reference"
        label="Number in ledger or order book"
        required
        maxLength={60}
        error={fields?.reference}
      />
      <SelectField name="costClass" label="Class" empty="Not sorted" choices={costClassChoices} />
      <TextField
        name="orderReference"
        label="For order number"
        hint="Of a payment."
        maxLength={60}
        error={fields?.orderReference}
      />
      <div className="grid content-end">
        <SubmitButton kind="plain" pending={change.pending}>
          Enter
        </SubmitButton>
      </div>
    </form>
  );
}
