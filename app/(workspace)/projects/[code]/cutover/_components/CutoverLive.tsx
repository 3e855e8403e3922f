"use client";

import { Derivation } from "@/app/_ui/Derivation";
import { KeyFigure } from "@/app/_ui/KeyFigure";
import { KeyFigures } from "@/app/_ui/KeyFigures";
import { Notice } from "@/app/_ui/Notice";
import { Section } from "@/app/_ui/Section";
import { UndoBar } from "@/app/_ui/UndoBar";
import { useDone } from "@/app/(workspace)/_components/useDone";
import { CutoverForm } from "@/app/(workspace)/projects/[code]/cutover/_components/CutoverForm";
import { StepCard } from "@/app/(workspace)/projects/[code]/cutover/_components/StepCard";
import { StepForm } from "@/app/(workspace)/projects/[code]/cutover/_components/StepForm";
import { useDeviceClock } from "@/app/(workspace)/projects/[code]/cutover/_components/useDeviceClock";
import { hoursBetween } from "@/lib/projects/cutover";
import {
  type CutoverPlan,
  type CutoverStanding,
  cutoverStanding,
  endWords,
  fallBackSteps,
  fallBackWords,
  reckonAt,
  span,
} from "@/lib/view/cutover";
import { moment } from "@/lib/view/time";

interface CutoverLiveProps {
  readonly plan: CutoverPlan;
  readonly timeZone: string;
  readonly projectId: string;
  readonly today: string;
  readonly mayWrite: boolean;
}

/** A cutover as it stands at this minute: the way back, what is left, and each step with its times. */
export function CutoverLive({ plan, timeZone, projectId, today, mayWrite }: CutoverLiveProps) {
  const { done, tell, undo, close } = useDone();
  const device = useDeviceClock();
  const standing = cutoverStanding(plan, reckonAt(plan, device));
  const { steps } = standing.expected;
  const expected = new Map(steps.map((step) => [step.id, step]));
  const toCome = steps.find(({ state }) => state === "to-come")?.id;
  return (
    <>
      <Standing plan={plan} standing={standing} timeZone={timeZone} />
      <Section
        title="Steps"
        id="steps"
        actions={
          mayWrite ? (
            <>
              <StepForm {...{ plan, tell }} step={null} trigger="Add a step" />
              <CutoverForm {...{ projectId, timeZone, today, tell }} plan={plan} />
            </>
          ) : null
        }
      >
        {plan.steps.length === 0 ? (
          <p className="text-ink-2">No step is planned yet.</p>
        ) : (
          <ol className="no-print grid gap-3">
            {plan.steps.map((step) => {
              const found = expected.get(step.id);
              return found ? (
                <li key={step.id}>
                  <StepCard
                    {...{ plan, step, timeZone, mayWrite, tell }}
                    expected={found}
                    next={found.state === "running" || step.id === toCome}
                  />
                </li>
              ) : null;
            })}
          </ol>
        )}
      </Section>
      <UndoBar message={done?.message ?? null} {...(done?.undo ? { onUndo: undo } : {})} onClose={close} />
    </>
  );
}

interface StandingProps {
  readonly plan: CutoverPlan;
  readonly standing: CutoverStanding;
  readonly timeZone: string;
}

const POINT_LOOKS = { ahead: "info", past: "problem", none: "caution", over: "info" } as const;

function Standing({ plan, standing, timeZone }: StandingProps) {
  const { at, expected, fallBack, point, done } = standing;
  const left = at === null ? null : hoursBetween(at, expected.endsAt);
  return (
    <>
      <div aria-live="polite">
        <Notice kind={POINT_LOOKS[point]} title="The way back">
          {fallBackWords(plan, standing, timeZone)}
        </Notice>
      </div>
      <KeyFigures>
        <KeyFigure
          label="Steps over"
          value={`${done} of ${plan.steps.length}`}
          date={at === null ? "nothing is written down yet" : `reckoned at ${moment(at, timeZone)}`}
        />
        <KeyFigure
          label="Work left"
          value={left === null || left <= 0 ? "–" : span(left)}
          span={`last step expected to end ${moment(expected.endsAt, timeZone)}`}
        />
        <KeyFigure
          label={expected.spareHours < 0 ? "Too late for production by" : "Spare before production"}
          value={span(expected.spareHours)}
          span={`production must start ${moment(plan.productionAt, timeZone)}`}
        />
        <KeyFigure
          label={fallBack.kind === "tested" ? "Fall-back point" : "Fall-back point: none"}
          value={fallBack.kind === "tested" ? moment(fallBack.at, timeZone) : "–"}
          span={
            plan.restoreTestedOn === null
              ? "never tried"
              : `tried ${plan.restoreTestedOn} by ${plan.restoreTestedBy}`
          }
        />
      </KeyFigures>
      <Derivation
        title="How the fall-back point is worked out"
        steps={fallBackSteps(plan, standing, timeZone)}
      >
        Common practice, no source. A way back that nobody tried is none, whatever the arithmetic says.{" "}
        {endWords(standing, timeZone)} A step not begun waits for every step the plan ends before it; a
        running step is given its planned hours.
      </Derivation>
    </>
  );
}
