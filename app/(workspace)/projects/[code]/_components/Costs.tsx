"use client";

import { Button } from "@/app/_ui/Button";
import { FormMessage } from "@/app/_ui/FormMessage";
import { RowTable } from "@/app/_ui/RowTable";
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

const HEADS = ["Day", "Kind", { text: "Amount", end: true }, "For", "Number"];

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
        <RowTable caption="Ledger" heads={mayWrite ? [...HEADS, { text: "Undo", print: false }] : HEADS}>
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
        </RowTable>
      )}
      {mayWrite ? <CostForm {...{ projectId, currency, asOf, change }} /> : null}
      <ChangeDone change={change} />
    </Section>
  );
}
