"use client";

import { EmptyState } from "@/app/_ui/EmptyState";
import { RowTable } from "@/app/_ui/RowTable";
import { Section } from "@/app/_ui/Section";
import { UndoBar } from "@/app/_ui/UndoBar";
import { useDone } from "@/app/(workspace)/_components/useDone";
import { RiskForm } from "@/app/(workspace)/projects/[code]/points/_components/RiskForm";
import type { Range } from "@/lib/projects/riskExposure";
import { count, NOT_KNOWN } from "@/lib/view/number";
import { localRange } from "@/lib/view/projectMoney";
import { exposureOf, openExposure, type ProjectRiskRow, RISK_STATES } from "@/lib/view/projectPoints";

interface RisksProps {
  readonly projectId: string;
  readonly currency: string;
  readonly risks: readonly ProjectRiskRow[];
  readonly mayWrite: boolean;
}

const HEADS = [
  "What may happen",
  { text: "Chance", end: true },
  { text: "Would cost", end: true },
  { text: "Expected", end: true },
  "What is done about it",
  "Who",
  "State",
] as const;

/** What may go wrong, with chance and effect as ranges, and what it comes to. */
export function Risks({ projectId, currency, risks, mayWrite }: RisksProps) {
  const { done, tell, undo, close } = useDone();
  const form = { projectId, currency, tell };
  return (
    <Section
      title="Risks of the project"
      id="risks"
      lead={exposureLead(risks, currency)}
      actions={mayWrite ? <RiskForm {...form} risk={null} trigger="Add a risk" /> : null}
    >
      {risks.length === 0 ? (
        <EmptyState title="No risk is on record">
          Write down what may go wrong while there is still time to act, with a chance and an effect as
          ranges.
        </EmptyState>
      ) : (
        <RowTable
          caption={`Risks, money in ${currency}`}
          heads={mayWrite ? [...HEADS, { text: "Change", print: false }] : HEADS}
        >
          {risks.map((risk) => (
            <tr key={risk.id}>
              <th scope="row" className="min-w-56">
                {risk.what}
              </th>
              <td data-align="end" className="whitespace-nowrap">
                {chanceWords(risk.chance)}
              </td>
              <td data-align="end" className="whitespace-nowrap">
                {localRange(effectOf(risk), currency) || NOT_KNOWN}
              </td>
              <td data-align="end" className="whitespace-nowrap">
                {risk.state === "open" ? localRange(exposureOf(risk), currency) || NOT_KNOWN : "–"}
              </td>
              <td>{risk.action}</td>
              <td>{risk.owner === "" ? "○ nobody" : risk.owner}</td>
              <td>{RISK_STATES[risk.state]}</td>
              {mayWrite ? (
                <td className="no-print">
                  <RiskForm {...form} risk={risk} trigger="Change" />
                </td>
              ) : null}
            </tr>
          ))}
        </RowTable>
      )}
      <UndoBar message={done?.message ?? null} {...(done?.undo ? { onUndo: undo } : {})} onClose={close} />
    </Section>
  );
}

const effectOf = ({ effect }: ProjectRiskRow): Range | null =>
  effect && { low: Number(effect.low), high: Number(effect.high) };

function chanceWords(chance: Range | null): string {
  if (chance === null) return NOT_KNOWN;
  const percent = (share: number) => String(Number((100 * share).toFixed(1)));
  return `${percent(chance.low)}–${percent(chance.high)} %`;
}

function exposureLead(risks: readonly ProjectRiskRow[], currency: string): string {
  const { low, high, notEstimated } = openExposure(risks);
  const open = risks.filter(({ state }) => state === "open").length;
  if (open === 0) return "No risk is open.";
  const unknown =
    notEstimated === 0
      ? ""
      : ` ${count(notEstimated, "risk is", "risks are")} not estimated and in neither end.`;
  return `${count(open, "open risk", "open risks")}: expected to cost ${localRange({ low, high }, currency)} together. Chance times effect, all low ends and all high ends added; the widest range of the estimates, not a statistical span.${unknown}`;
}
