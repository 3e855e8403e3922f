"use client";

import { FormMessage } from "@/app/_ui/FormMessage";
import { RowTable } from "@/app/_ui/RowTable";
import { Section } from "@/app/_ui/Section";
import { ChangeDone } from "@/app/(workspace)/projects/[code]/_components/ChangeDone";
import { useProjectChange } from "@/app/(workspace)/projects/[code]/_components/useProjectChange";
import { AskChange } from "@/app/(workspace)/projects/[code]/money/_components/AskChange";
import { DecideChange } from "@/app/(workspace)/projects/[code]/money/_components/DecideChange";
import { changeSourceWords, changeStateWords } from "@/lib/view/budgetChange";
import { costClassWords } from "@/lib/view/costClass";
import { exactMoney } from "@/lib/view/format";
import type { ProjectChange, ProjectFile } from "@/lib/view/project";
import { day } from "@/lib/view/time";

interface ChangesProps {
  readonly project: Pick<ProjectFile, "id" | "currency" | "changes" | "items">;
  readonly asOf: string;
  readonly mayWrite: boolean;
  readonly mayApprove: boolean;
}

const HEADS = ["No.", "Change", { text: "Money by class", end: true }, "From", "Asked by", "State"];

/** Changes of the budget: asked for with a reason, approved or declined by somebody who may. */
export function Changes({ project, asOf, mayWrite, mayApprove }: ChangesProps) {
  const change = useProjectChange();
  const { id: projectId, currency, changes } = project;
  const acts = mayWrite || mayApprove;
  return (
    <Section
      title="Changes of the budget"
      lead="A change counts from the day somebody approves it. From contingency it moves money between classes; new money raises the budget."
    >
      {changes.length === 0 ? (
        <p className="text-ink-2">No change was asked for.</p>
      ) : (
        <RowTable
          caption="Changes of the budget"
          heads={acts ? [...HEADS, { text: "Decide", print: false }] : HEADS}
        >
          {changes.map((one) => (
            <tr key={one.id}>
              <td>{one.number}</td>
              <th scope="row">
                {one.what}
                <span className="block font-normal text-ink-2 text-sm">{one.why}</span>
              </th>
              <td data-align="end">
                {one.amounts.map(({ costClass, amount }) => (
                  <span key={costClass} className="block">
                    {`${costClassWords(costClass)} ${exactMoney(amount, currency)}`}
                  </span>
                ))}
              </td>
              <td>{changeSourceWords(one.source)}</td>
              <td>{`${one.askedBy}, ${day(one.askedOn)}`}</td>
              <td>
                <ChangeState one={one} asOf={asOf} />
              </td>
              {acts ? (
                <td className="no-print">
                  <DecideChange {...{ projectId, one, change, mayWrite, mayApprove }} />
                </td>
              ) : null}
            </tr>
          ))}
        </RowTable>
      )}
      <FormMessage kind="problem">{change.refusal?.reason}</FormMessage>
      {mayWrite ? <AskChange {...{ project, change }} /> : null}
      <ChangeDone change={change} />
    </Section>
  );
}

function ChangeState({ one, asOf }: { readonly one: ProjectChange; readonly asOf: string }) {
  const { state, decidedBy, decidedOn, decisionWhy } = one;
  return (
    <>
      <span className="font-semibold">{changeStateWords(state)}</span>
      {decidedOn === null ? null : (
        <span className="block text-ink-2 text-sm">
          {`${decidedBy}, ${day(decidedOn)}${decidedOn > asOf ? " – after the as-of day, not counted" : ""}`}
        </span>
      )}
      {decisionWhy ? <span className="block text-ink-2 text-sm">{decisionWhy}</span> : null}
    </>
  );
}
