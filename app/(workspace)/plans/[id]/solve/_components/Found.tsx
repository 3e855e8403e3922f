import { LineSpanChart } from "@/app/_ui/chart/LineSpanChart";
import { KeyFigure } from "@/app/_ui/KeyFigure";
import { KeyFigures } from "@/app/_ui/KeyFigures";
import { Notice } from "@/app/_ui/Notice";
import { RowTable } from "@/app/_ui/RowTable";
import { Section } from "@/app/_ui/Section";
import { TakeOver } from "@/app/(workspace)/plans/[id]/solve/_components/TakeOver";
import type { PlanCompanions, SolveOutcome } from "@/lib/portfolio/planResult";
import { money } from "@/lib/view/format";
import type { LimitNames } from "@/lib/view/limitWords";
import { plainNumber } from "@/lib/view/number";
import type { BoardPage } from "@/lib/view/planBoard";
import { boardNames, conflictWords, curveChart, provenWords } from "@/lib/view/solveView";

interface FoundProps {
  readonly page: BoardPage;
  readonly outcome: SolveOutcome;
  readonly writes: boolean;
}

const ENDED = {
  settled: "nothing improves it any more",
  "time-limit": "the time ran out first: a longer search may find more",
  cancelled: "stopped by hand",
} as const;

/** What a search found: a plan to take over, or why there is none. */
export function Found({ page, outcome, writes }: FoundProps) {
  const names = boardNames(page.view);
  if (outcome.kind === "none-found") return null;
  if (outcome.kind === "infeasible") {
    const { clash, relax } = conflictWords(outcome.conflict, names);
    return (
      <Notice kind="problem" title="These cannot all be kept">
        <ul className="list-disc pl-5">
          {clash.map((one) => (
            <li key={one}>{one}</li>
          ))}
        </ul>
        <p className="mt-2 font-semibold">The least that would do</p>
        {relax === null ? <p>Nothing would: no way of a duty can be in time.</p> : null}
        <ul className="list-disc pl-5">
          {(relax ?? []).map((one) => (
            <li key={one}>{one}</li>
          ))}
        </ul>
      </Notice>
    );
  }
  const { plan, companions } = outcome;
  const { worth, model } = plan;
  return (
    <>
      <KeyFigures>
        <KeyFigure label="Less loss by the plan found" value={money(worth.worth)} />
        <KeyFigure label="After the money spent" value={money(worth.worth - worth.spentDiscounted)} />
        <KeyFigure label="Spent, typical" value={money(worth.spent)} />
        <KeyFigure
          label="Gap, of the linear model"
          value={`${plainNumber(model.gap * 100, 2)} %`}
          span={`exchange added ${money(plan.exchangeGain)} in ${plan.rounds} rounds; ${ENDED[plan.ended]}`}
        />
      </KeyFigures>
      {provenWords(plan).map((words) => (
        <p key={words} className="measure mb-2 text-ink-2 text-sm">
          {words}
        </p>
      ))}
      {writes ? (
        <TakeOver planId={page.id} version={page.version} choices={plan.choices} before={page.view.choices} />
      ) : null}
      {companions ? <Beside companions={companions} names={names} /> : null}
    </>
  );
}

function Beside({ companions, names }: { readonly companions: PlanCompanions; readonly names: LimitNames }) {
  const { rankAndCut, rankSameMoney, curve, moreMoney, decisions, breakEven } = companions;
  return (
    <>
      {curve.length > 1 ? (
        <Section
          title="What money buys"
          lead="Each point is a plan of its own, all budgets at a share of what they are."
        >
          <LineSpanChart chart={curveChart(companions)} />
        </Section>
      ) : null}
      <Section title="One more" lead="Worth of more money, and what each decision by hand costs.">
        <RowTable caption="Marginal worth" heads={["What", { text: "Worth", end: true }]}>
          {moreMoney.map(({ year, amount, worth }) => (
            <tr key={year}>
              <th scope="row">
                {money(amount)} more in {year}
              </th>
              <td data-align="end">{money(worth)}</td>
            </tr>
          ))}
          {decisions.map(({ kind, decision, worthLost }) => (
            <tr key={`${kind}${decision.lineId}${decision.optionId}${decision.slotId}`}>
              <th scope="row">
                {names.line(decision.lineId)} {kind === "pin" ? "pinned in" : "pinned out"}
              </th>
              <td data-align="end">{worthLost > 0 ? `costs ${money(worthLost)}` : "costs nothing"}</td>
            </tr>
          ))}
          {rankAndCut ? (
            <tr>
              <th scope="row">
                Down the ranking within the same limits, {money(rankAndCut.worth.spent)} spent
              </th>
              <td data-align="end">{money(rankAndCut.worth.worth)}</td>
            </tr>
          ) : null}
          {rankSameMoney ? (
            <tr>
              <th scope="row">
                Down the ranking with no more money than this plan, {money(rankSameMoney.worth.spent)} spent
              </th>
              <td data-align="end">{money(rankSameMoney.worth.worth)}</td>
            </tr>
          ) : null}
        </RowTable>
      </Section>
      {breakEven.length > 0 ? (
        <Section
          title="What must be believed"
          lead="Cost of an hour's stop at which the line's share of the plan just pays its cost."
        >
          <RowTable
            caption="Break-even cost per hour"
            heads={[
              "Line",
              { text: "On record, €/h", end: true },
              { text: "Pays from, €/h", end: true },
              { text: "Share of the worth", end: true },
            ]}
          >
            {breakEven.map(({ lineId, costPerHour, atLeast, marginalWorth }) => (
              <tr key={lineId}>
                <th scope="row">{names.line(lineId)}</th>
                <td data-align="end">{plainNumber(costPerHour)}</td>
                <td data-align="end">{atLeast === null ? "at no cost per hour" : plainNumber(atLeast)}</td>
                <td data-align="end">{money(marginalWorth)}</td>
              </tr>
            ))}
          </RowTable>
        </Section>
      ) : null}
    </>
  );
}
