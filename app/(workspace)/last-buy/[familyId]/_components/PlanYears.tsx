import { useState } from "react";
import { Button } from "@/app/_ui/Button";
import { TextareaField } from "@/app/_ui/field/TextareaField";
import type { BuyChoicesProps } from "@/app/(workspace)/last-buy/[familyId]/_components/BuyChoices";
import { lineUnitsOf, readPlanYears, writePlanYears } from "@/lib/view/planYears";

/** Supposed years of retrofit by line, typed as a short list: what the quantity would be under a plan. */
export function PlanYears({ basis, choice, change }: BuyChoicesProps) {
  const lines = lineUnitsOf(basis);
  const [text, setText] = useState(() => writePlanYears(choice.planYears));
  const read = readPlanYears(text, lines);
  const type = (typed: string) => {
    setText(typed);
    const found = readPlanYears(typed, lines);
    if (found.problem === null) change({ ...choice, planYears: found.years });
  };
  const supposed = Object.keys(choice.planYears).length;
  return (
    <details className="disclosure sm:col-span-2 lg:col-span-4">
      <summary>
        {supposed === 0
          ? "Suppose a year of retrofit for lines without one"
          : `A year of retrofit is supposed for ${supposed} of ${lines.length} lines`}
      </summary>
      <div className="mt-2 grid gap-3 lg:grid-cols-2">
        <TextareaField
          label="Lines and years"
          name="planYears"
          rows={8}
          hint="One line a row: its code and the year. The first of July stands for the year. Days a project plans go before."
          value={text}
          error={read.problem ?? undefined}
          onChange={({ target }) => type(target.value)}
        />
        <div>
          <p className="font-semibold text-[0.9375rem]">Lines with units</p>
          <p className="text-ink-2 text-sm">
            {lines.map(({ code, units }) => `${code} ${units}`).join(" · ")}
          </p>
          {supposed > 0 ? (
            <div className="mt-2">
              <Button onClick={() => type("")}>Suppose nothing</Button>
            </div>
          ) : null}
        </div>
      </div>
    </details>
  );
}
