"use client";

import type { FormEvent } from "react";
import { SelectField } from "@/app/_ui/field/SelectField";
import { TextareaField } from "@/app/_ui/field/TextareaField";
import { TextField } from "@/app/_ui/field/TextField";
import { SubmitButton } from "@/app/_ui/SubmitButton";
import type { useProjectChange } from "@/app/(workspace)/projects/[code]/_components/useProjectChange";
import { askThisChange, withdrawThisChange } from "@/app/(workspace)/projects/[code]/money/actions";
import { changeSourceWords } from "@/lib/view/budgetChange";
import { costClassChoices } from "@/lib/view/costClass";
import type { ProjectFile } from "@/lib/view/project";

interface AskChangeProps {
  readonly project: Pick<ProjectFile, "id" | "currency" | "items">;
  readonly change: ReturnType<typeof useProjectChange>;
}

const SOURCES = (["contingency", "new_money"] as const).map((value) => ({
  value,
  label: changeSourceWords(value),
}));

/** Asks for a change of the budget, with its money by class. */
export function AskChange({ project, change }: AskChangeProps) {
  const { id: projectId, currency } = project;
  const fields = change.refusal?.fields;
  const send = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const form = event.currentTarget;
    const data = new FormData(form);
    const text = (name: string) => String(data.get(name) ?? "").trim();
    const amounts = costClassChoices.flatMap(({ value: costClass }) => {
      const amount = text(costClass);
      return amount === "" ? [] : [{ costClass, amount }];
    });
    const source = text("source") === "new_money" ? ("new_money" as const) : ("contingency" as const);
    change.run({
      run: () => askThisChange({ projectId, what: text("what"), why: text("why"), source, amounts }),
      done: "The change is asked for.",
      undo: (made) => withdrawThisChange({ projectId, ...made }),
      after: () => form.reset(),
    });
  };
  return (
    <details className="disclosure no-print mt-4">
      <summary className="py-1.5 font-semibold">Ask for a change</summary>
      <form
        onSubmit={send}
        noValidate
        aria-label="Ask for a change of the budget"
        className="mt-2 grid gap-4 sm:grid-cols-3"
      >
        <TextField name="what" label="What changes" required maxLength={120} error={fields?.what} />
        <SelectField name="source" label="Where the money comes from" required choices={SOURCES} />
        <div className="sm:col-span-3">
          <TextareaField name="why" label="Reason" required rows={2} maxLength={600} error={fields?.why} />
        </div>
        {costClassChoices.map(({ value, label }) => (
          <TextField
            key={value}
            name={value}
            label={`${label} (${currency})`}
            autoComplete="off"
            error={fields?.amounts}
          />
        ))}
        <p className="text-ink-2 text-sm sm:col-span-3">
          Below zero takes money from a class. Fill the classes the change is about, leave the others empty.
        </p>
        <div>
          <SubmitButton kind="plain" pending={change.pending}>
            Ask
          </SubmitButton>
        </div>
      </form>
    </details>
  );
}
