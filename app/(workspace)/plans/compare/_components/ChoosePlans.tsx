import Form from "next/form";
import { Button } from "@/app/_ui/Button";
import { type PlanSummary, planStatusWords } from "@/lib/view/plan";
import { day } from "@/lib/view/time";

interface ChoosePlansProps {
  readonly choices: readonly PlanSummary[];
  readonly chosen: readonly string[];
  readonly asOf: string;
}

/** Chooses the plans to compare; they stand in the address. */
export function ChoosePlans({ choices, chosen, asOf }: ChoosePlansProps) {
  return (
    <Form action="/plans/compare" scroll={false} className="no-print mb-6">
      <fieldset className="grid gap-1 sm:grid-cols-2 lg:grid-cols-3">
        <legend className="label mb-1">Plans, five at most</legend>
        {choices.map(({ id, name, status, createdOn }) => (
          <label key={id} className="flex items-center gap-2">
            <input
              type="checkbox"
              className="tick"
              name="plan"
              value={id}
              defaultChecked={chosen.includes(id)}
            />
            <span>
              {name}{" "}
              <span className="text-ink-2 text-sm">
                {planStatusWords(status).toLowerCase()}, {day(createdOn)}
              </span>
            </span>
          </label>
        ))}
      </fieldset>
      <input type="hidden" name="asOf" value={asOf} />
      <Button type="submit" className="mt-3">
        Compare
      </Button>
    </Form>
  );
}
