import { type FormEvent, useState, useTransition } from "react";
import { Dialog } from "@/app/_ui/Dialog";
import { FormMessage } from "@/app/_ui/FormMessage";
import { NumberField } from "@/app/_ui/field/NumberField";
import { TextField } from "@/app/_ui/field/TextField";
import { SubmitButton } from "@/app/_ui/SubmitButton";
import { stateValues } from "@/app/(workspace)/assumptions/actions";
import type { Refusal } from "@/lib/access/action";
import { type AssumptionRow, assumptionNumber } from "@/lib/view/assumptionTable";

interface ChangeValuesProps {
  /** Values changed together. */
  readonly rows: readonly AssumptionRow[];
  readonly title: string;
  /** Version the new one is made from; 0 when there is none. */
  readonly ownVersion: number;
  readonly onStated: (version: number) => void;
}

/** The button that states another value, and its form. */
export function ChangeValues({ title, onStated, ...rest }: ChangeValuesProps) {
  return (
    <Dialog trigger="Change" kind="quiet" title={title}>
      {(close) => (
        <ValuesForm
          {...rest}
          onStated={(version) => {
            close();
            onStated(version);
          }}
        />
      )}
    </Dialog>
  );
}

const ownValue = (row: AssumptionRow) => row.own ?? row.likely;

/** Numbers that differ from the own set; an empty field is no number and is refused as such. */
function changesIn(rows: readonly AssumptionRow[], data: FormData): Record<string, number> {
  const entries = rows.flatMap((row): [string, number][] => {
    const text = String(data.get(row.path) ?? "").trim();
    const value = text === "" ? Number.NaN : Number(text);
    return value === ownValue(row) ? [] : [[row.path, value]];
  });
  return Object.fromEntries(entries);
}

function ValuesForm({ rows, ownVersion, onStated }: Omit<ChangeValuesProps, "title">) {
  const [refusal, setRefusal] = useState<Refusal | null>(null);
  const [pending, start] = useTransition();
  const send = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    setRefusal(null);
    const data = new FormData(event.currentTarget);
    const text = (name: string) => String(data.get(name) ?? "");
    const changes = changesIn(rows, data);
    start(async () => {
      const answer = await stateValues({
        seen: ownVersion,
        changes,
        note: text("note"),
        owner: text("owner"),
      });
      if (answer.ok) onStated(answer.value.version);
      else setRefusal(answer.error);
    });
  };
  const problem = (name: string) => refusal?.fields?.[name] ?? refusal?.fields?.[`changes.${name}`];
  return (
    <form noValidate onSubmit={send} className="grid gap-4">
      <p>
        {ownVersion === 0
          ? "This makes version 1 of the own set: the likely values with this change."
          : `This makes version ${ownVersion + 1} of the own set: version ${ownVersion} with this change.`}{" "}
        It moves no figure until it is taken into use.
      </p>
      {rows.map((row) => (
        <NumberField
          key={row.path}
          label={row.name}
          name={row.path}
          unit={row.unit}
          required
          defaultValue={ownValue(row)}
          hint={`From ${row.least} to ${row.most}. Careful ${assumptionNumber(row.careful)}, likely ${assumptionNumber(row.likely)}, bold ${assumptionNumber(row.bold)}; in use ${assumptionNumber(row.inUse)}.`}
          error={problem(row.path)}
        />
      ))}
      <TextField
        label="Basis"
        name="note"
        required
        hint="Where the value comes from: a record, a document, a bulletin; or that it has no source."
        error={problem("note")}
      />
      <TextField label="Owner" name="owner" required hint="Who answers for it." error={problem("owner")} />
      <FormMessage kind="problem">{refusal?.reason}</FormMessage>
      <div>
        <SubmitButton pending={pending}>Write the version</SubmitButton>
      </div>
    </form>
  );
}
