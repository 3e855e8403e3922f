"use client";

import { EntryForm } from "@/app/_ui/EntryForm";
import { NumberField } from "@/app/_ui/field/NumberField";
import { SelectField } from "@/app/_ui/field/SelectField";
import { TextareaField } from "@/app/_ui/field/TextareaField";
import type { Desk } from "@/app/(workspace)/review/_components/desk";
import { addABuy, changeThisBuy, removeThisBuy } from "@/app/(workspace)/review/actions";
import type { ReviewBuy } from "@/lib/view/reviewRecord";

interface BuyFormProps {
  readonly desk: Desk;
  readonly reviewId: string;
  /** Null asks which. */
  readonly partId: string | null;
  readonly reason: string;
  /** The row that is changed; absent is a new one. */
  readonly buy?: ReviewBuy;
  readonly onDone: () => void;
}

/** How many pieces of a part are to be bought, and why. */
export function BuyForm({ desk, reviewId, partId, reason, buy, onDone }: BuyFormProps) {
  const free = desk.parts.filter(({ id }) => !desk.listed.has(id));
  return (
    <EntryForm
      submit={buy ? "Save the row" : "Put it on the list"}
      save={(text) => {
        const wanted = { quantity: Number(text("quantity")), reason: text("reason") };
        return buy
          ? changeThisBuy({ ...wanted, buyId: buy.id, version: buy.version })
          : addABuy({ ...wanted, reviewId, partId: partId ?? text("partId") });
      }}
      onSaved={(saved) => {
        onDone();
        desk.tell({
          message: buy ? "Row of the purchase list changed." : "Put on the purchase list.",
          undo: () =>
            buy
              ? changeThisBuy({ ...saved, quantity: buy.quantity, reason: buy.reason })
              : removeThisBuy(saved),
        });
      }}
    >
      {(errorOf) => (
        <>
          {partId === null ? (
            <SelectField
              name="partId"
              label="Part"
              required
              empty="Choose a part installed here"
              choices={free.map(({ id, number, description }) => ({
                value: id,
                label: `${number} ${description}`,
              }))}
              error={errorOf("partId")}
            />
          ) : null}
          <NumberField
            name="quantity"
            label="Quantity"
            unit="pieces"
            required
            step={1}
            min={1}
            defaultValue={buy?.quantity ?? 1}
            error={errorOf("quantity")}
          />
          <TextareaField
            name="reason"
            label="Why"
            required
            rows={2}
            maxLength={300}
            defaultValue={buy?.reason ?? reason}
            error={errorOf("reason")}
          />
        </>
      )}
    </EntryForm>
  );
}
