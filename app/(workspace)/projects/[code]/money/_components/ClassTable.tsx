"use client";

import { FormMessage } from "@/app/_ui/FormMessage";
import { RowTable } from "@/app/_ui/RowTable";
import { Section } from "@/app/_ui/Section";
import { ChangeDone } from "@/app/(workspace)/projects/[code]/_components/ChangeDone";
import { useProjectChange } from "@/app/(workspace)/projects/[code]/_components/useProjectChange";
import { RestField } from "@/app/(workspace)/projects/[code]/money/_components/RestField";
import type { Ledger, LedgerLine } from "@/lib/projects/ledger";
import { costClassWords } from "@/lib/view/costClass";
import { exactAmount } from "@/lib/view/format";
import type { ProjectFile } from "@/lib/view/project";

interface ClassTableProps {
  readonly project: Pick<ProjectFile, "id" | "currency" | "toOrder">;
  readonly ledger: Ledger;
  readonly mayWrite: boolean;
}

const HEADS = [
  "Class",
  ...[
    "Original budget",
    "Approved changes",
    "Budget",
    "Ordered",
    "Paid",
    "Ordered, not yet paid",
    "Still to order",
    "In the end",
  ].map((text) => ({ text, end: true })),
];

/** The budget by class: what was given, what is bound, what is still needed. */
export function ClassTable({ project, ledger, mayWrite }: ClassTableProps) {
  const change = useProjectChange();
  const { currency } = project;
  const { lines, total } = ledger;
  return (
    <Section
      title="Budget by class"
      lead={`All in ${currency}. A payment for an order takes from what is still open of it. In the end = paid + ordered, not yet paid + still to order; what is left of contingency is not counted as spent unless somebody states it.`}
    >
      <RowTable caption="Budget by class" heads={HEADS}>
        {lines.map(({ costClass, ...line }) => (
          <tr key={costClass ?? "none"}>
            <th scope="row">{costClassWords(costClass)}</th>
            <Amounts line={line} currency={currency} />
            <td data-align="end">
              {mayWrite && costClass !== null ? (
                <RestField {...{ project, costClass, change }} />
              ) : (
                exactAmount(line.toOrder, currency)
              )}
            </td>
            <td data-align="end">{exactAmount(line.forecast, currency)}</td>
          </tr>
        ))}
        <tr className="font-semibold">
          <th scope="row">Sum</th>
          <Amounts line={total} currency={currency} />
          <td data-align="end">{exactAmount(total.toOrder, currency)}</td>
          <td data-align="end">{exactAmount(total.forecast, currency)}</td>
        </tr>
      </RowTable>
      <FormMessage kind="problem">{change.refusal?.reason}</FormMessage>
      <ChangeDone change={change} />
    </Section>
  );
}

const AMOUNTS = ["original", "changed", "budget", "ordered", "paid", "open"] as const;

function Amounts({ line, currency }: { readonly line: LedgerLine; readonly currency: string }) {
  return AMOUNTS.map((key) => (
    <td key={key} data-align="end">
      {exactAmount(line[key], currency)}
    </td>
  ));
}
