import { Notice } from "@/app/_ui/Notice";
import { Section } from "@/app/_ui/Section";
import { ChooseSnapshots } from "@/app/(workspace)/moved/_components/ChooseSnapshots";
import { MovedTable } from "@/app/(workspace)/moved/_components/MovedTable";
import { StepInputs } from "@/app/(workspace)/moved/_components/StepInputs";
import { TakeSnapshot } from "@/app/(workspace)/moved/_components/TakeSnapshot";
import type { MovedLook, SnapshotMark } from "@/lib/view/moved";
import { type WeeklyRule, weeklyWords } from "@/lib/view/weekly";

interface ComparisonProps {
  readonly look: MovedLook;
  readonly snapshots: readonly SnapshotMark[];
  readonly mayTake: boolean;
  readonly asOf: string;
  readonly weekly: WeeklyRule;
}

/** Two snapshots side by side: the lines with their steps, and the inputs behind them. */
export function Comparison({ look, snapshots, mayTake, asOf, weekly }: ComparisonProps) {
  return (
    <>
      <div className="mb-6 flex flex-wrap items-end justify-between gap-4">
        <ChooseSnapshots {...{ snapshots, asOf }} zone={weekly.zone} from={look.from.id} to={look.to.id} />
        {mayTake ? <TakeSnapshot asOf={asOf} /> : null}
      </div>
      {look.isSound ? null : (
        <Notice kind="problem" title="A snapshot no longer computes to the result it was stored with">
          The way of computing changed without a new engine name, or the stored bytes did. Do not rely on this
          comparison; take a new snapshot.
        </Notice>
      )}
      <Section
        title="Change of stop loss by line"
        lead="Each step changes one group of inputs from the earlier to the later state, in this order, and is the difference it makes. Rounded to whole euros before differences are taken, so steps and lines add up as printed; the losses themselves are estimates with the spans shown."
      >
        <MovedTable lines={look.lines} total={look.total} />
      </Section>
      <Section
        title="What lies behind each step"
        lead={
          look.isWholeGroup
            ? undefined
            : "Inputs at your sites and of your parts. Stock and events of other sites stand as sums without a name; what else changed there can still move your lines through shared spares and rates."
        }
      >
        <StepInputs look={look} />
      </Section>
      <p className="measure mt-6 text-ink-2 text-sm">
        Computed by {look.engine}. {soundness(look)} {weeklyWords(weekly)} Stock stands in a snapshot as it
        was on the shelf when it was taken.
      </p>
    </>
  );
}

function soundness({ isSound, to }: MovedLook): string {
  if (!isSound) return "";
  return to.takenAt === null
    ? "The snapshot was computed again to the result it was stored with."
    : "Both snapshots were computed again to the results they were stored with.";
}
