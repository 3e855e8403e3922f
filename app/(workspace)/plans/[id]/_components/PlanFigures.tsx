import { KeyFigure } from "@/app/_ui/KeyFigure";
import { KeyFigures } from "@/app/_ui/KeyFigures";
import { Notice } from "@/app/_ui/Notice";
import { money } from "@/lib/view/format";
import { notTheWorth, type PlanPage } from "@/lib/view/plan";
import { day } from "@/lib/view/time";

/** The plan's sums, for somebody who may see all of its lines; else what the person sees of it. */
export function PlanFigures({ plan }: { readonly plan: PlanPage }) {
  const { totals } = plan;
  const basis = `Cut on ${day(plan.createdOn)} from the ranking by ${plan.rankedBy === "score" ? "risk score" : "stop loss"} as of ${day(plan.asOf)}, engine ${plan.engine}, data version ${plan.dataVersion}. The figures stay as they were then.`;
  if (totals === null)
    return (
      <Notice kind="info" title={`Your ${plan.ownLines} lines of a plan over more sites`}>
        Its budget and sums are shown to people who may see all of its lines. {basis}
      </Notice>
    );
  return (
    <>
      <KeyFigures>
        <KeyFigure label="Budget" value={money(totals.budget)} />
        <KeyFigure label="Spent, estimated" value={money(totals.spent)} />
        <KeyFigure label="Left" value={money(totals.budget - totals.spent)} />
        <KeyFigure label="Funded lines" value={`${totals.funded}`} unit={`of ${totals.lines}`} />
        <KeyFigure
          label="First-year stop loss of these lines"
          value={money(totals.fundedLoss)}
          unit="a year"
        />
      </KeyFigures>
      <p className="measure">{notTheWorth}</p>
      <p className="measure mt-2 text-ink-2 text-sm">{basis}</p>
    </>
  );
}
