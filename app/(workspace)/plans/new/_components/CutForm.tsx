import Form from "next/form";
import { Button } from "@/app/_ui/Button";
import { CheckboxField } from "@/app/_ui/field/CheckboxField";
import { NumberField } from "@/app/_ui/field/NumberField";
import { SelectField } from "@/app/_ui/field/SelectField";
import { TextField } from "@/app/_ui/field/TextField";
import type { PlanQuery } from "@/lib/view/planQuery";

interface CutFormProps {
  readonly query: PlanQuery;
  readonly asOf: string;
  readonly unreadable: boolean;
}

const ORDERS = [
  { value: "loss", label: "Stop loss, money a year" },
  { value: "score", label: "Risk score" },
] as const;

/** Budget, year and order of the cut; sends them into the address with the pins and costs kept. */
export function CutForm({ query, asOf, unreadable }: CutFormProps) {
  const costs = Object.entries(query.costs).map(([code, cost]) => `${code}:${cost}`);
  const kept = { in: query.pinnedIn.join(","), out: query.pinnedOut.join(","), cost: costs.join(","), asOf };
  return (
    <Form action="/plans/new" scroll={false} className="no-print mb-6 grid gap-4 sm:grid-cols-4">
      <TextField
        key={`budget-${query.budget}`}
        name="budget"
        label="Budget (EUR)"
        required
        defaultValue={query.budget === null ? "" : String(query.budget)}
        error={unreadable ? "Write an amount such as 1900000." : undefined}
      />
      <NumberField
        name="year"
        label="Budget year"
        required
        min={2000}
        max={2099}
        step={1}
        defaultValue={query.year}
      />
      <SelectField name="by" label="Order" required choices={ORDERS} defaultValue={query.by} />
      <div className="grid content-end gap-1">
        <CheckboxField
          name="fill"
          label="Go on past a line that does not fit"
          value="yes"
          defaultChecked={query.fill}
        />
      </div>
      {Object.entries(kept).map(([name, value]) =>
        value === "" ? null : <input key={name} type="hidden" name={name} value={value} />,
      )}
      <div className="sm:col-span-4">
        <Button type="submit" kind="primary">
          Draw the funding line
        </Button>
      </div>
    </Form>
  );
}
