import { useState, useTransition } from "react";
import { FormMessage } from "@/app/_ui/FormMessage";
import { DateField } from "@/app/_ui/field/DateField";
import { type Choice, SelectField } from "@/app/_ui/field/SelectField";
import { TextField } from "@/app/_ui/field/TextField";
import { SubmitButton } from "@/app/_ui/SubmitButton";
import type { Refusal } from "@/lib/access/action";
import type { Result } from "@/lib/kernel/result";

interface RowField<Name extends string> {
  readonly name: Name;
  readonly label: string;
  readonly hint?: string;
  readonly date?: boolean;
  readonly choices?: readonly Choice[];
}

interface RowFormProps<Name extends string> {
  readonly fields: readonly RowField<Name>[];
  readonly values: Readonly<Record<Name, string>>;
  readonly save: (values: Record<Name, string>) => Promise<Result<unknown, Refusal>>;
  readonly onSaved: (values: Record<Name, string>) => void;
}

/** A short form of texts, days and choices; what was refused keeps what was typed. */
export function RowForm<Name extends string>({ fields, values, save, onSaved }: RowFormProps<Name>) {
  const [pending, start] = useTransition();
  const [refusal, setRefusal] = useState<Refusal | null>(null);
  const send = (data: FormData) =>
    start(async () => {
      const typed = Object.fromEntries(
        fields.map(({ name }) => [name, String(data.get(name) ?? "").trim()]),
      ) as Record<Name, string>;
      const answer = await save(typed);
      if (answer.ok) onSaved(typed);
      else setRefusal(answer.error);
    });
  return (
    <form
      noValidate
      className="grid gap-4 sm:grid-cols-2"
      onSubmit={(event) => {
        event.preventDefault();
        setRefusal(null);
        send(new FormData(event.currentTarget));
      }}
    >
      {fields.map(({ name, label, hint, date, choices }) => {
        const given = { name, label, hint, defaultValue: values[name], error: refusal?.fields?.[name] };
        if (choices) return <SelectField key={name} {...given} empty="Choose" choices={choices} />;
        return date ? (
          <DateField key={name} {...given} />
        ) : (
          <TextField key={name} {...given} autoComplete="off" />
        );
      })}
      <div className="sm:col-span-2">
        <FormMessage kind="problem">{refusal?.reason}</FormMessage>
      </div>
      <div>
        <SubmitButton pending={pending}>Keep</SubmitButton>
      </div>
    </form>
  );
}
