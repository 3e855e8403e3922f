import { Button } from "@/app/_ui/Button";
import { FormMessage } from "@/app/_ui/FormMessage";
import { NumberField } from "@/app/_ui/field/NumberField";
import type { CostStep } from "@/lib/view/lineRanking";

/** One step as typed. */
export interface StepEntry {
  readonly key: number;
  readonly afterHours: string;
  readonly cost: string;
}

export const stepEntries = (steps: readonly CostStep[]): StepEntry[] =>
  steps.map(({ afterHours, cost }, key) => ({ key, afterHours: String(afterHours), cost: String(cost) }));

/** The steps as typed; what is left empty reads 0 and is refused with its row. */
export const readSteps = (entries: readonly StepEntry[]): CostStep[] =>
  entries.map(({ afterHours, cost }) => ({ afterHours: Number(afterHours), cost: Number(cost) }));

interface StepRowsProps {
  readonly entries: readonly StepEntry[];
  readonly currency: string;
  readonly onChange: (entries: readonly StepEntry[]) => void;
  /** What is wrong with a field of the steps, e.g. `costSteps.0.cost`. */
  readonly problem: (name: string) => string | undefined;
}

/** What a long stop costs on top: after how many hours, how much more. */
export function StepRows({ entries, currency, onChange, problem }: StepRowsProps) {
  const replace = (key: number, change: Partial<StepEntry>) =>
    onChange(entries.map((entry) => (entry.key === key ? { ...entry, ...change } : entry)));
  const fresh = { key: Math.max(-1, ...entries.map(({ key }) => key)) + 1, afterHours: "", cost: "" };
  return (
    <fieldset className="grid gap-3 border border-rule-2 p-3">
      <legend className="label px-1">Steps: more once a stop lasts longer</legend>
      <p className="text-ink-2 text-sm">
        A customer who stands, a contract penalty, spoilt goods: each counts once, on top of the rest.
      </p>
      {entries.map((entry, at) => {
        const control = (field: "afterHours" | "cost") => ({
          name: `costSteps.${at}.${field}`,
          value: entry[field],
          error: problem(`costSteps.${at}.${field}`),
          required: true,
          min: 0,
        });
        return (
          <div key={entry.key} className="flex flex-wrap items-start gap-x-4 gap-y-2">
            <NumberField
              {...control("afterHours")}
              label={`Step ${at + 1}: after`}
              unit="hours"
              onChange={(event) => replace(entry.key, { afterHours: event.target.value })}
            />
            <NumberField
              {...control("cost")}
              label={`Step ${at + 1}: costs more`}
              unit={currency}
              onChange={(event) => replace(entry.key, { cost: event.target.value })}
            />
            <Button
              kind="quiet"
              className="sm:mt-6"
              onClick={() => onChange(entries.filter(({ key }) => key !== entry.key))}
            >
              Remove step {at + 1}
            </Button>
          </div>
        );
      })}
      <FormMessage kind="problem">{problem("costSteps")}</FormMessage>
      <div>
        <Button onClick={() => onChange([...entries, fresh])}>
          {entries.length === 0 ? "Add a step" : "Add another step"}
        </Button>
      </div>
    </fieldset>
  );
}
