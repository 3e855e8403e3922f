import { KeyFigure } from "@/app/_ui/KeyFigure";
import { KeyFigures } from "@/app/_ui/KeyFigures";
import { Notice } from "@/app/_ui/Notice";
import type { Cut } from "@/lib/portfolio/cutByBudget";
import { money, moneyRange } from "@/lib/view/format";
import { count } from "@/lib/view/number";
import { notTheWorth } from "@/lib/view/plan";
import type { PinEffect, PlanCut } from "@/lib/view/planCut";

interface CutOutcomeProps {
  readonly cut: PlanCut;
  readonly query: { readonly budget: number | null };
}

/** What the cut funds and what it removes, or why the pins cannot be kept and how much would be enough. */
export function CutOutcome({ cut, query }: CutOutcomeProps) {
  const { outcome, rows } = cut;
  if (outcome === null)
    return (
      <Notice kind="info" title="No budget yet">
        Type a budget to draw the funding line through the ranking below.
      </Notice>
    );
  if (outcome.ok) return <Funded cut={cut} made={outcome.value} budget={query.budget ?? 0} />;
  if (outcome.error.reason === "pin-not-priced") {
    const { ids } = outcome.error;
    const codes = rows.filter(({ line }) => ids.includes(line.id)).map(({ line }) => line.code);
    return (
      <Notice kind="problem" title={`${codes.join(", ")} cannot be pinned in without a cost`}>
        Every part there can still be ordered, so no retrofit is estimated. Type a cost, or free the line.
      </Notice>
    );
  }
  const { enough, short } = outcome.error;
  return (
    <Notice kind="problem" title="The lines pinned in cost more than the budget">
      They need {money(enough)}; that is {money(short)} more than the budget of {money(query.budget)}. A
      budget of {money(enough)} would be enough for them alone. Free a line, type another cost, or raise the
      budget.
    </Notice>
  );
}

function Funded(props: { readonly cut: PlanCut; readonly made: Cut; readonly budget: number }) {
  const { cut, made, budget } = props;
  const span = fundedSpan(cut);
  return (
    <>
      <KeyFigures>
        <KeyFigure
          label="Funded"
          value={String(made.funded.length)}
          unit={made.funded.length === 1 ? "line" : "lines"}
        />
        <KeyFigure
          label="Spent"
          value={money(made.spent)}
          span={`${moneyRange(span)} with every estimate at one end`}
        />
        <KeyFigure label="Left of the budget" value={money(made.remaining)} />
        <KeyFigure label="First-year stop loss of these lines" value={money(cut.fundedLoss)} unit="a year" />
      </KeyFigures>
      <p className="measure">
        The {count(made.funded.length, "line")} funded lose {money(cut.fundedLoss)} in their first year
        without a retrofit
        {cut.unknownLoss > 0
          ? `, not counting ${count(cut.unknownLoss, "line")} whose loss is not known`
          : ""}
        . {notTheWorth}
      </p>
      {span.high > budget ? (
        <p className="measure mt-2 text-ink-2">
          With every estimate at its high end the funded lines would cost {money(span.high)}: more than the
          budget. Get quotations before the money is promised.
        </p>
      ) : null}
      <Effects effects={cut.effects} />
    </>
  );
}

/** Typed costs are taken as they are; estimates run between the ends of common practice. */
function fundedSpan({ rows }: PlanCut) {
  const funded = rows.filter((row) => row.funded);
  const sum = (end: "low" | "high" | "mean") =>
    funded.reduce((all, { line, cost, typed }) => {
      const estimate = typed ? null : line.estimate;
      return all + (estimate?.[end] ?? cost ?? 0);
    }, 0);
  return { mean: sum("mean"), low: sum("low"), high: sum("high") };
}

function Effects({ effects }: { readonly effects: readonly PinEffect[] }) {
  if (effects.length === 0) return null;
  return (
    <div className="measure mt-4">
      <h2 className="font-semibold">What each pin changes</h2>
      <ul className="mt-1 list-disc pl-5">
        {effects.map((effect) => (
          <li key={effect.code}>{effectSentence(effect)}</li>
        ))}
      </ul>
      <p className="mt-1 text-ink-2 text-sm">
        Each against the same cut without that pin; the losses are summed first-year losses, not what a plan
        is worth..
      </p>
    </div>
  );
}

function effectSentence({ code, pin, loss, spent, comesIn, fallsOut }: PinEffect): string {
  if (comesIn.length + fallsOut.length === 0)
    return `${code}, pinned ${pin}: changes nothing at this budget.`;
  const moves = [
    comesIn.length > 0 ? `${comesIn.join(", ")} comes in` : "",
    fallsOut.length > 0 ? `${fallsOut.join(", ")} falls out` : "",
  ].filter((text) => text !== "");
  const losses = `${money(Math.abs(loss))} a year ${loss < 0 ? "less" : "more"} stop loss among the funded lines`;
  return `${code}, pinned ${pin}: ${moves.join("; ")}; ${money(Math.abs(spent))} ${spent < 0 ? "less" : "more"} spent, ${losses}.`;
}
