"use client";

import type { FormEvent } from "react";
import { FormMessage } from "@/app/_ui/FormMessage";
import { TextField } from "@/app/_ui/field/TextField";
import { Section } from "@/app/_ui/Section";
import { SubmitButton } from "@/app/_ui/SubmitButton";
import { useProjectChange } from "@/app/(workspace)/projects/[code]/_components/useProjectChange";
import { splitThisBudget } from "@/app/(workspace)/projects/[code]/money/actions";
import { costClassChoices } from "@/lib/view/costClass";
import { exactMoney } from "@/lib/view/format";
import type { ProjectFile } from "@/lib/view/project";

/** Splits the original budget by class, once. */
export function SplitBudget({
  project,
}: {
  readonly project: Pick<ProjectFile, "id" | "currency" | "budget">;
}) {
  const change = useProjectChange();
  const { id: projectId, currency, budget } = project;
  const send = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const data = new FormData(event.currentTarget);
    const items = costClassChoices.flatMap(({ value: costClass }) => {
      const amount = String(data.get(costClass) ?? "").trim();
      return amount === "" ? [] : [{ costClass, amount }];
    });
    change.run({ run: () => splitThisBudget({ projectId, items }), done: "The budget was split." });
  };
  return (
    <Section
      title="Split the budget"
      lead={`The original budget of ${exactMoney(budget, currency)} is in no classes yet. Split it once; afterwards it stays as it stands and only changes move money.`}
    >
      <form
        onSubmit={send}
        noValidate
        aria-label="Split the budget by class"
        className="no-print grid gap-4 sm:grid-cols-3"
      >
        {costClassChoices.map(({ value, label }) => (
          <TextField key={value} name={value} label={`${label} (${currency})`} autoComplete="off" />
        ))}
        <div className="sm:col-span-3">
          <FormMessage kind="problem">{change.refusal?.reason}</FormMessage>
          <SubmitButton kind="plain" pending={change.pending}>
            Split it
          </SubmitButton>
        </div>
      </form>
    </Section>
  );
}
