import { type FormEvent, useState, useTransition } from "react";
import { Dialog } from "@/app/_ui/Dialog";
import { FormMessage } from "@/app/_ui/FormMessage";
import { NumberField } from "@/app/_ui/field/NumberField";
import { SubmitButton } from "@/app/_ui/SubmitButton";
import { saveNorm } from "@/app/(workspace)/lines/[code]/scope/actions";
import type { Refusal } from "@/lib/access/action";
import type { NormRow } from "@/lib/view/scopeNorm";

interface ChangeNormProps {
  readonly row: NormRow;
  readonly seen: string | null;
  readonly onChanged: (changedAt: string) => void;
}

/** The button that changes a norm, and its form. */
export function ChangeNorm({ row, seen, onChanged }: ChangeNormProps) {
  return (
    <Dialog trigger={`Change ${row.name}`} kind="quiet" title={row.name}>
      {(close) => (
        <NormForm
          row={row}
          seen={seen}
          onChanged={(changedAt) => {
            close();
            onChanged(changedAt);
          }}
        />
      )}
    </Dialog>
  );
}

const LABELS = ["Low", "Typical", "High"];

function NormForm({ row, seen, onChanged }: ChangeNormProps) {
  const [refusal, setRefusal] = useState<Refusal | null>(null);
  const [pending, start] = useTransition();
  const labels = row.values.length === 1 ? ["Value"] : LABELS;
  const send = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    setRefusal(null);
    const data = new FormData(event.currentTarget);
    // An empty field is no number, not zero, and is refused as such.
    const values = labels.map((label) => Number(String(data.get(label) ?? "").trim() || Number.NaN));
    start(async () => {
      const answer = await saveNorm({ key: row.key, seen, values });
      if (answer.ok) onChanged(answer.value.changedAt);
      else setRefusal(answer.error);
    });
  };
  return (
    <form noValidate onSubmit={send} className="grid gap-4">
      <p>It holds for every line of every site from now on; the plan’s estimates follow.</p>
      <div className="grid gap-4 sm:grid-cols-3">
        {labels.map((label, place) => (
          <NumberField
            key={label}
            name={label}
            label={label}
            unit={row.unit}
            required
            defaultValue={row.values[place] ?? ""}
          />
        ))}
      </div>
      <FormMessage kind="problem">{refusal?.reason}</FormMessage>
      <div>
        <SubmitButton pending={pending}>Save the norm</SubmitButton>
      </div>
    </form>
  );
}
