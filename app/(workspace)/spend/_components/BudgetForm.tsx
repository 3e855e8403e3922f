import Form from "next/form";
import { Button } from "@/app/_ui/Button";
import { TextField } from "@/app/_ui/field/TextField";

interface BudgetFormProps {
  readonly typed: string;
  readonly unreadable: boolean;
  readonly asOf: string;
}

/** The money to spend; sent into the address. */
export function BudgetForm({ typed, unreadable, asOf }: BudgetFormProps) {
  return (
    <Form action="/spend" scroll={false} className="no-print mb-6 grid gap-4 sm:grid-cols-3">
      <TextField
        key={typed}
        name="budget"
        label="Budget (EUR)"
        hint="Such as 200000 or 200k"
        required
        defaultValue={typed}
        error={unreadable ? "Write an amount such as 200000; nothing was spent." : undefined}
      />
      <input type="hidden" name="asOf" value={asOf} />
      <div className="grid content-end">
        <div>
          <Button type="submit" kind="primary">
            Spend it
          </Button>
        </div>
      </div>
    </Form>
  );
}
