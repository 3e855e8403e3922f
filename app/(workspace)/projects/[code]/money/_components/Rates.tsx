"use client";

import type { FormEvent } from "react";
import { Button } from "@/app/_ui/Button";
import { FormMessage } from "@/app/_ui/FormMessage";
import { SelectField } from "@/app/_ui/field/SelectField";
import { TextField } from "@/app/_ui/field/TextField";
import { RowTable } from "@/app/_ui/RowTable";
import { Section } from "@/app/_ui/Section";
import { SubmitButton } from "@/app/_ui/SubmitButton";
import { ChangeDone } from "@/app/(workspace)/projects/[code]/_components/ChangeDone";
import { useProjectChange } from "@/app/(workspace)/projects/[code]/_components/useProjectChange";
import { setThisMonthRate } from "@/app/(workspace)/projects/[code]/money/actions";
import type { RateTable, StatedRate } from "@/lib/view/projectRates";
import { day } from "@/lib/view/time";

interface RatesProps {
  readonly table: RateTable;
  /** The project's. */
  readonly currency: string;
  readonly asOf: string;
}

const HEADS = ["Currency", "Kind", { text: "For one euro", end: true }, "From", "Source"];
/** Months whose rates are listed, the newest first; older ones stay in force for entries of their days. */
const MONTHS_SHOWN = 3;

/** The rates money is converted at: the budget rate, and what finance booked at month by month. */
export function Rates({ table, currency, asOf }: RatesProps) {
  const change = useProjectChange();
  const newest = [...new Set(table.months.map(({ on }) => on))].slice(0, MONTHS_SHOWN);
  const months = table.months.filter(({ on }) => newest.includes(on));
  const takeBack = ({ currency: code, on, perEuro, source }: StatedRate) => {
    const which = { currency: code, month: on.slice(0, 7) };
    change.run({
      run: () => setThisMonthRate({ ...which, seen: perEuro, wanted: null }),
      done: `The rate of ${code} for ${which.month} was taken back.`,
      undo: () => setThisMonthRate({ ...which, seen: null, wanted: { perEuro, source } }),
    });
  };
  return (
    <Section
      title="Rates"
      lead="An entry in another currency is converted once, when it is entered: at the rate of its month where it is stated for both currencies, else at the budget rates. The rate and its source stay with the entry."
    >
      <RowTable caption="Rates" heads={table.mayState ? [...HEADS, { text: "Undo", print: false }] : HEADS}>
        {table.budget.map((rate) => (
          <RateRow key={rate.currency} rate={rate} kind="budget rate" mayState={table.mayState} />
        ))}
        {months.map((rate) => (
          <RateRow
            key={`${rate.currency} ${rate.on}`}
            rate={rate}
            kind={`rate of ${rate.on.slice(0, 7)}`}
            mayState={table.mayState}
            onTakeBack={() => takeBack(rate)}
          />
        ))}
      </RowTable>
      <FormMessage kind="problem">{change.refusal?.reason}</FormMessage>
      {table.mayState ? <RateForm {...{ table, currency, asOf, change }} /> : null}
      <ChangeDone change={change} />
    </Section>
  );
}

interface RateRowProps {
  readonly rate: StatedRate;
  readonly kind: string;
  readonly mayState: boolean;
  readonly onTakeBack?: () => void;
}

function RateRow({ rate, kind, mayState, onTakeBack }: RateRowProps) {
  return (
    <tr>
      <th scope="row">{rate.currency}</th>
      <td>{kind}</td>
      <td data-align="end">{rate.perEuro}</td>
      <td>{day(rate.on)}</td>
      <td>{rate.source}</td>
      {mayState ? (
        <td className="no-print">
          {onTakeBack ? (
            <Button kind="quiet" aria-label={`Take back ${rate.currency}, ${kind}`} onClick={onTakeBack}>
              Take back
            </Button>
          ) : null}
        </td>
      ) : null}
    </tr>
  );
}

function RateForm({
  table,
  currency,
  asOf,
  change,
}: RatesProps & { readonly change: ReturnType<typeof useProjectChange> }) {
  const fields = change.refusal?.fields;
  const choices = table.budget
    .filter((rate) => rate.currency !== "EUR")
    .map((rate) => ({ value: rate.currency, label: rate.currency }));
  const send = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const form = event.currentTarget;
    const data = new FormData(form);
    const text = (name: string) => String(data.get(name) ?? "").trim();
    const which = { currency: text("currency"), month: text("month") };
    const wanted = { perEuro: text("perEuro"), source: text("source") };
    const known = table.months.find(
      (one) => one.currency === which.currency && one.on.startsWith(which.month),
    );
    change.run({
      run: () => setThisMonthRate({ ...which, seen: known?.perEuro ?? null, wanted }),
      done: `${which.currency} for ${which.month}: ${wanted.perEuro}.`,
      undo: () =>
        setThisMonthRate({
          ...{ ...which, seen: wanted.perEuro },
          wanted: known ? { perEuro: known.perEuro, source: known.source } : null,
        }),
      after: () => form.reset(),
    });
  };
  return (
    <form
      onSubmit={send}
      noValidate
      aria-label="State the rate of a month"
      className="no-print mt-5 grid gap-4 sm:grid-cols-4"
    >
      <SelectField
        name="currency"
        label="Currency"
        required
        choices={choices}
        defaultValue={currency}
        error={fields?.currency}
      />
      <TextField name="month" label="Month" required defaultValue={asOf.slice(0, 7)} error={fields?.month} />
      <TextField
        name="perEuro"
        label="For one euro"
        required
        autoComplete="off"
        error={fields?.["wanted.perEuro"]}
      />
      <TextField
        name="source"
        label="Source of the rate"
        required
        maxLength={120}
        error={fields?.["wanted.source"]}
      />
      <div>
        <SubmitButton kind="plain" pending={change.pending}>
          State it
        </SubmitButton>
      </div>
    </form>
  );
}
