"use client";

import { Section } from "@/app/_ui/Section";
import { Acceptance } from "@/app/(workspace)/projects/[code]/axes/[axisId]/_components/Acceptance";
import { CheckFacts } from "@/app/(workspace)/projects/[code]/axes/[axisId]/_components/CheckFacts";
import { CheckForm } from "@/app/(workspace)/projects/[code]/axes/[axisId]/_components/CheckForm";
import { type AxisFile, axisState, verdictWords } from "@/lib/view/axisRecord";
import { ruleWords } from "@/lib/view/axisRule";

interface RecordSheetProps {
  readonly axis: AxisFile;
  readonly mayRecord: boolean;
  readonly mayAccept: boolean;
}

/** Every check of the axis, to fill in or to read, and what stands between it and its acceptance. */
export function RecordSheet({ axis, mayRecord, mayAccept }: RecordSheetProps) {
  const { checks, hindrances } = axisState(axis);
  return (
    <>
      <Section
        title="Checks"
        lead="In the order of the work. Common practice, no source; the procedure of the plant comes first."
      >
        <ol className="grid gap-5">
          {checks.map((judged, i) => (
            <li key={judged.check.id} className="keep-together border-rule-2 border-b pb-4">
              <div className="mb-2 flex flex-wrap items-baseline justify-between gap-x-6">
                <h3 className="font-semibold">{`${i + 1}. ${judged.check.title}`}</h3>
                <span className="label">
                  {mayRecord ? "" : verdictWords(judged.verdict)}
                  {judged.check.twoNames ? " two names" : ""}
                </span>
              </div>
              <p className="measure mb-3 text-ink-2 text-sm">
                {`${judged.check.how} Passes when ${ruleWords(judged.check)}.`}
              </p>
              {mayRecord ? (
                <CheckForm axis={axis} judged={judged} />
              ) : (
                <CheckFacts judged={judged} travelUnit={axis.travelUnit} />
              )}
            </li>
          ))}
        </ol>
      </Section>
      <Acceptance axis={axis} hindrances={hindrances} mayAccept={mayAccept} />
    </>
  );
}
