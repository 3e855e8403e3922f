"use client";

import { Button } from "@/app/_ui/Button";
import { FormMessage } from "@/app/_ui/FormMessage";
import { RowTable } from "@/app/_ui/RowTable";
import { Section } from "@/app/_ui/Section";
import { ChangeDone } from "@/app/(workspace)/projects/[code]/_components/ChangeDone";
import { useProjectChange } from "@/app/(workspace)/projects/[code]/_components/useProjectChange";
import { CostForm } from "@/app/(workspace)/projects/[code]/money/_components/CostForm";
import { addThisCost, removeThisCost } from "@/app/(workspace)/projects/[code]/money/actions";
import { costClassWords } from "@/lib/view/costClass";
import { exactMoney } from "@/lib/view/format";
import type { ProjectCost, ProjectFile } from "@/lib/view/project";
import type { RateTable } from "@/lib/view/projectRates";
import { day } from "@/lib/view/time";

interface CostListProps {
  readonly project: Pick<ProjectFile, "id" | "costs" | "currency">;
  readonly asOf: string;
  readonly mayWrite: boolean;
  readonly rates: RateTable;
}

const HEADS = ["Day", "Kind", { text: "Amount", end: true }, "For", "Class", "Number", "Order"];

/** The ledger of a project: orders and payments. */
export function CostList({ project, asOf, mayWrite, rates }: CostListProps) {
  const change = useProjectChange();
  const { id: projectId, currency, costs } = project;
  const takeBack = ({ id: costId, own, amount, ...entry }: ProjectCost) =>
    change.run({
      run: () => removeThisCost({ projectId, costId }),
      done: `${entry.reference}, ${exactMoney(amount, currency)}, taken back.`,
      undo: () =>
        addThisCost({
          ...{ projectId, ...entry },
          ...{ amount: own?.amount ?? amount, currency: own?.currency ?? null },
        }),
    });
  return (
    <Section
      title="Ledger"
      lead="Orders and payments. A payment that names its order takes from what is still open of it; the order itself stays."
    >
      <FormMessage kind="problem">{change.refusal?.reason}</FormMessage>
      {costs.length === 0 ? (
        <p className="text-ink-2">Nothing is ordered or paid yet.</p>
      ) : (
        <RowTable caption="Ledger" heads={mayWrite ? [...HEADS, { text: "Undo", print: false }] : HEADS}>
          {costs.map((entry) => (
            <tr key={entry.id}>
              <CostCells {...{ entry, currency, asOf }} />
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
      {mayWrite ? <CostForm {...{ projectId, currency, asOf, rates, change }} /> : null}
      <ChangeDone change={change} />
    </Section>
  );
}

interface CostCellsProps extends Pick<CostListProps, "asOf"> {
  readonly entry: ProjectCost;
  readonly currency: string;
}

function CostCells({ entry, currency, asOf }: CostCellsProps) {
  const { kind, amount, spentOn, text, reference, orderReference, costClass, own } = entry;
  return (
    <>
      <td>
        {day(spentOn)}
        {spentOn > asOf ? " – after the as-of day, not counted" : ""}
      </td>
      <td>{kind === "actual" ? "paid" : "ordered"}</td>
      <td data-align="end">
        {exactMoney(amount, currency)}
        {own ? (
          <span className="block text-ink-2 text-sm">
            {`${exactMoney(own.amount, own.currency)} at ${own.rate}, ${own.source}, from ${day(own.ratedOn)}`}
          </span>
        ) : null}
      </td>
      <td>{text}</td>
      <td>{costClassWords(costClass)}</td>
      <td>{reference}</td>
      <td>{orderReference ?? "–"}</td>
    </>
  );
}
