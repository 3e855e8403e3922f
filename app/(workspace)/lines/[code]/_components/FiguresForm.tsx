"use client";

import { useState } from "react";
import { FormMessage } from "@/app/_ui/FormMessage";
import { DateField } from "@/app/_ui/field/DateField";
import { NumberField } from "@/app/_ui/field/NumberField";
import { SelectField } from "@/app/_ui/field/SelectField";
import { TextField } from "@/app/_ui/field/TextField";
import { WhyField } from "@/app/_ui/field/WhyField";
import { SubmitButton } from "@/app/_ui/SubmitButton";
import { useSend } from "@/app/_ui/useSend";
import {
  readSteps,
  type StepEntry,
  StepRows,
  stepEntries,
} from "@/app/(workspace)/lines/[code]/_components/StepRows";
import type { Refusal } from "@/lib/access/action";
import type { Result } from "@/lib/kernel/result";
import { COST_METHODS, type CostMethod } from "@/lib/schema/costMethod";
import { evidenceChoices } from "@/lib/view/evidence";
import type { StoredFigures } from "@/lib/view/lineDossier";
import type { CostStep } from "@/lib/view/lineRanking";

interface FiguresFormProps {
  readonly stored: StoredFigures;
  readonly currency: string;
  readonly save: (wanted: StoredFigures, why: string) => Promise<Result<null, Refusal>>;
  readonly onSaved: (wanted: StoredFigures) => void;
}

const METHODS = {
  margin: "contribution margin that is lost",
  contract: "contract: penalties and agreed terms",
  estimate: "estimate of people who know the line",
} satisfies Record<CostMethod, string>;

/** Reads the form; an empty field means not known, never zero. */
function figuresOf(data: FormData, costSteps: readonly CostStep[]): StoredFigures {
  const text = (name: string) => {
    const value = String(data.get(name) ?? "").trim();
    return value === "" ? null : value;
  };
  const shifts = text("shiftsPerWeek");
  return {
    costPerHour: text("costPerHour"),
    costFixed: text("costFixed"),
    costSteps,
    costMethod: COST_METHODS.find((one) => one === data.get("costMethod")) ?? null,
    costOwner: text("costOwner"),
    costApprovedOn: text("costApprovedOn"),
    costValidUntil: text("costValidUntil"),
    costEvidence: evidenceChoices.find(({ value }) => value === data.get("costEvidence"))?.value ?? "assumed",
    bufferHours: text("bufferHours"),
    shiftsPerWeek: shifts === null ? null : Number(shifts),
  };
}

/** The figures of a line as a form. */
export function FiguresForm({ stored, currency, save, onSaved }: FiguresFormProps) {
  const [steps, setSteps] = useState<readonly StepEntry[]>(() => stepEntries(stored.costSteps));
  const wantedOf = (data: FormData) => figuresOf(data, readSteps(steps));
  const { pending, reason, send, errorOf, forget } = useSend({
    save: (data) => save(wantedOf(data), String(data.get("why") ?? "")),
    onSaved: (_, data) => onSaved(wantedOf(data)),
  });
  const field = (name: Exclude<keyof StoredFigures, "costSteps">) => ({
    name,
    defaultValue: stored[name] ?? "",
    error: errorOf(name),
  });
  return (
    <form noValidate className="grid gap-4" onSubmit={send}>
      <p className="text-ink-2 text-sm">An empty field means not known; it is never taken as zero.</p>
      <div className="grid gap-4 sm:grid-cols-2">
        <NumberField {...field("costPerHour")} label="Cost of a stop" unit={`${currency} an hour`} min={0} />
        <NumberField {...field("costFixed")} label="Cost of any stop at all" unit={currency} min={0} />
      </div>
      <StepRows
        entries={steps}
        currency={currency}
        onChange={(next) => {
          setSteps(next);
          if (next.length !== steps.length) forget();
        }}
        problem={errorOf}
      />
      <div className="grid gap-4 sm:grid-cols-2">
        <SelectField
          {...field("costMethod")}
          label="How the cost was found"
          choices={COST_METHODS.map((value) => ({ value, label: METHODS[value] }))}
          empty="not known"
        />
        <TextField {...field("costOwner")} label="Who answers for it" maxLength={120} autoComplete="off" />
        <DateField {...field("costApprovedOn")} label="Approved on" />
        <DateField {...field("costValidUntil")} label="Valid until" />
        <NumberField {...field("bufferHours")} label="Buffer after the line" unit="hours" min={0} />
        <NumberField
          {...field("shiftsPerWeek")}
          label="Shifts of 8 hours"
          unit="a week"
          min={0}
          max={21}
          step={1}
        />
      </div>
      <SelectField
        {...field("costEvidence")}
        label="How well the cost is known"
        choices={evidenceChoices}
        required
      />
      <WhyField error={errorOf("why")} />
      <FormMessage kind="problem">{reason}</FormMessage>
      <div>
        <SubmitButton pending={pending}>Save figures</SubmitButton>
      </div>
    </form>
  );
}
