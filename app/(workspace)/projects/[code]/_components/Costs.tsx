"use client";

import { Button } from "@/app/_ui/Button";
import { FormMessage } from "@/app/_ui/FormMessage";
import { Section } from "@/app/_ui/Section";
import { ChangeDone } from "@/app/(workspace)/projects/[code]/_components/ChangeDone";
import { CostForm } from "@/app/(workspace)/projects/[code]/_components/CostForm";
import { useProjectChange } from "@/app/(workspace)/projects/[code]/_components/useProjectChange";
import { addThisCost, removeThisCost } from "@/app/(workspace)/projects/actions";
import { exactMoney } from "@/lib/view/format";
import type { ProjectCost, ProjectFile } from "@/lib/view/project";
import { day } from "@/lib/view/time";

interface CostsProps {
  readonly project: Pick<ProjectFile, "id" | "costs" | "currency">;
  readonly asOf: string;
  readonly mayWrite: boolean;
}

/** The ledger of a project: what is paid and what is ordered and not yet paid. */
export function Costs({ project, asOf, mayWrite }: CostsProps) {
  const change = useProjectChange();
  const { id: projectId, currency, costs } = project;
  const takeBack = ({ id: costId, ...entry }: ProjectCost) =>
    change.run({
      run: () => removeThisCost({ projectId, costId }),
      done: `${entry.reference}, ${exactMoney(entry.amount, currency)}, taken back.`,
      undo: () => addThisCost({ projectId, ...entry }),
    });
  return (
    <Section
      title="Ledger"
      lead="Ordered money leaves this list when it is paid: take the order back and enter the payment."
    >
      <FormMessage kind="problem">{change.refusal?.reason}</FormMessage>
      {costs.length === 0 ? (
        <p className="text-ink-2">Nothing is ordered or paid yet.</p>
      ) : (
        <div className="table-frame">
          <table className="table">
            <caption className="sr-only">Ledger</caption>
            <thead>
              <tr>
                <th scope="col" className="label">
                  Day
                </th>
                <th scope="col" className="label">
                  Kind
                </th>
                <th scope="col" className="label" data-align="end">
                  Amount
                </th>
                <th scope="col" className="label">
                  For
                </th>
                <th scope="col" className="label">
                  Number
                </th>
                {mayWrite ? (
                  <th scope="col" className="label no-print">
                    {"Undo"}
                  </th>
                ) : null}
              </tr>
            </thead>
            <tbody>
              {costs.map((entry) => (
                <tr key={entry.id}>
                  <td>
                    {day(entry.spentOn)}
                    {entry.spentOn > asOf ? " – after the as-of day, not counted" : ""}
                  </td>
                  <td>{entry.kind === "actual" ? "paid" : "ordered"}</td>
                  <td data-align="end">{exactMoney(entry.amount, currency)}</td>
                  <td>{entry.text}</td>
                  <td>{entry.reference}</td>
                  {mayWrite ? (
                    <td className="no-print">
                      <Button
                        kind="quiet"
                        aria-label={`Take back ${entry.reference}`}
                        aria-disabled={change.pending}
                        onClick={() => takeBack(entry)}
                      >
                        Take back
                      </Button>
                    </td>
                  ) : null}
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
      {mayWrite ? <CostForm {...{ projectId, currency, asOf, change }} /> : null}
      <ChangeDone change={change} />
    </Section>
  );
}
