import { useState, useTransition } from "react";
import { Button } from "@/app/_ui/Button";
import { FormMessage } from "@/app/_ui/FormMessage";
import { SelectField } from "@/app/_ui/field/SelectField";
import { TextareaField } from "@/app/_ui/field/TextareaField";
import { TextField } from "@/app/_ui/field/TextField";
import { SubmitButton } from "@/app/_ui/SubmitButton";
import { stateThisFigure, withdrawThisFigure } from "@/app/(workspace)/plans/inputs/actions";
import type { Refusal } from "@/lib/access/action";
import { isMoney } from "@/lib/schema/planInputs";
import { evidenceView } from "@/lib/view/evidence";
import type { FigureCell } from "@/lib/view/figureGrids";
import { kindWords, typedFigure } from "@/lib/view/planInputs";

interface FigureFormProps {
  readonly cell: FigureCell;
  readonly currencies: readonly string[];
  readonly close: () => void;
  readonly onSaved: (mark: { readonly figureId: string; readonly version: number }) => void;
  readonly onWithdrawn: () => void;
}

const EVIDENCE = (["documented", "measured", "inferred", "assumed"] as const).map((value) => ({
  value,
  label: `${evidenceView(value).text}: ${evidenceView(value).sentence}`,
}));

/** States a figure: the number, where it comes from, who answers for it. */
export function FigureForm({ cell, currencies, close, onSaved, onWithdrawn }: FigureFormProps) {
  const { key, figure } = cell;
  const [pending, start] = useTransition();
  const [refusal, setRefusal] = useState<Refusal | null>(null);
  const send = (data: FormData) =>
    start(async () => {
      const text = (name: string) => String(data.get(name) ?? "").trim();
      const answer = await stateThisFigure({
        ...{
          ...key,
          value: text("value").replaceAll(/\s/g, ""),
          source: text("source"),
          owner: text("owner"),
        },
        currency: isMoney(key.kind) ? text("currency") : null,
        evidence: EVIDENCE.find(({ value }) => value === text("evidence"))?.value ?? "assumed",
        version: figure?.version ?? null,
      });
      if (answer.ok) onSaved(answer.value);
      else setRefusal(answer.error);
    });
  const withdraw = () =>
    start(async () => {
      if (!figure) return;
      const answer = await withdrawThisFigure({ figureId: figure.id, version: figure.version });
      if (answer.ok) onWithdrawn();
      else setRefusal(answer.error);
    });
  const { unit } = kindWords(key.kind);
  return (
    <form
      noValidate
      className="grid gap-4"
      onSubmit={(event) => {
        event.preventDefault();
        setRefusal(null);
        send(new FormData(event.currentTarget));
      }}
    >
      <div className="grid gap-4 sm:grid-cols-2">
        <TextField
          name="value"
          label={isMoney(key.kind) || unit === "" ? "Amount" : `Value (${unit})`}
          required
          autoComplete="off"
          defaultValue={figure ? typedFigure(figure) : ""}
          error={refusal?.fields?.value}
        />
        {isMoney(key.kind) ? (
          <SelectField
            name="currency"
            label="Currency"
            required
            choices={currencies.map((value) => ({ value, label: value }))}
            defaultValue={figure?.currency ?? cell.currency ?? "EUR"}
            error={refusal?.fields?.currency}
          />
        ) : null}
      </div>
      <TextareaField
        name="source"
        label="Where it comes from"
        hint="Letter, contract, minutes."
        required
        rows={2}
        maxLength={300}
        defaultValue={figure?.source ?? ""}
        error={refusal?.fields?.source}
      />
      <TextField
        name="owner"
        label="Who answers for it"
        hint="A function, not a person's name."
        required
        maxLength={120}
        autoComplete="off"
        defaultValue={figure?.owner ?? ""}
        error={refusal?.fields?.owner}
      />
      <SelectField
        name="evidence"
        label="How well it is known"
        required
        choices={EVIDENCE}
        defaultValue={figure?.evidence ?? "documented"}
      />
      <FormMessage kind="problem">{refusal?.reason}</FormMessage>
      <div className="flex flex-wrap gap-2">
        <SubmitButton pending={pending}>State it</SubmitButton>
        {figure ? <Button onClick={withdraw}>Withdraw</Button> : null}
        <Button kind="quiet" onClick={close}>
          Leave
        </Button>
      </div>
    </form>
  );
}
