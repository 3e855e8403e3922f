"use client";

import { useState } from "react";
import { Button } from "@/app/_ui/Button";
import { FormMessage } from "@/app/_ui/FormMessage";
import { DateField } from "@/app/_ui/field/DateField";
import { TextField } from "@/app/_ui/field/TextField";
import { Section } from "@/app/_ui/Section";
import { ChangeDone } from "@/app/(workspace)/projects/[code]/_components/ChangeDone";
import { useProjectChange } from "@/app/(workspace)/projects/[code]/_components/useProjectChange";
import { MatrixRow } from "@/app/(workspace)/projects/[code]/axes/_components/MatrixRow";
import { useAxisMarks } from "@/app/(workspace)/projects/[code]/axes/_components/useAxisMarks";
import { walkCells } from "@/app/(workspace)/projects/[code]/axes/_components/walkCells";
import type { AxisStepKind } from "@/lib/schema/axisStep";
import { type AxisStepsFile, stepTotals } from "@/lib/view/axisSteps";

interface AxisMatrixProps {
  readonly code: string;
  readonly file: AxisStepsFile;
  readonly asOf: string;
  /** Name the marks are made in unless another is typed. */
  readonly me: string;
  readonly mayMark: boolean;
  readonly mayPlan: boolean;
}

/** Which axis has done which step: a press marks it, another takes it back, a column marks many. */
export function AxisMatrix({ code, file, asOf, me, mayMark, mayPlan }: AxisMatrixProps) {
  const change = useProjectChange();
  const [on, setOn] = useState(asOf);
  const [by, setBy] = useState(me);
  const [chosen, setChosen] = useState<ReadonlySet<string>>(new Set());
  const marks = useAxisMarks({ file, change, on, by });
  const { axes } = file;
  const isAll = chosen.size === axes.length;
  const choose = (id: string) => {
    const next = new Set(chosen);
    if (!next.delete(id)) next.add(id);
    setChosen(next);
  };
  return (
    <Section
      title="Steps of the axes"
      lead="Work counts when an axis has done a step, never by feel. Validated and accepted follow the record of an axis where it has one."
    >
      {mayMark ? (
        <div className="no-print mb-3 flex flex-wrap items-end gap-4">
          <DateField
            name="on"
            label="Done on"
            required
            value={on}
            max={asOf}
            onChange={(event) => setOn(event.target.value)}
          />
          <TextField
            name="by"
            label="Done by"
            required
            maxLength={80}
            value={by}
            onChange={(event) => setBy(event.target.value)}
          />
          {mayPlan ? (
            <Rounds count={chosen.size} onRound={(round) => marks.round([...chosen], round)} />
          ) : null}
        </div>
      ) : null}
      <FormMessage kind="problem">{change.refusal?.reason}</FormMessage>
      <div className="table-frame" data-long="">
        <table className="table" onKeyDown={walkCells}>
          <caption className="sr-only">Steps each axis has done</caption>
          <thead>
            <tr>
              <th scope="col" className="label">
                {mayMark ? (
                  <label className="inline-flex items-center gap-2">
                    <input
                      type="checkbox"
                      className="tick"
                      checked={isAll}
                      onChange={() => setChosen(new Set(isAll ? [] : axes.map(({ id }) => id)))}
                    />
                    Axis
                  </label>
                ) : (
                  "Axis"
                )}
              </th>
              <th scope="col" className="label">
                Round
              </th>
              {stepTotals(axes, asOf).map(({ step, word, done, total }) => (
                <th key={step} scope="col" className="label">
                  <StepHead
                    {...{ word, done, total }}
                    onMark={mayMark && chosen.size > 0 ? () => marks.mark([...chosen], step) : null}
                    onUnmark={mayMark && chosen.size > 0 ? () => marks.unmark([...chosen], step) : null}
                  />
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {axes.map((axis, row) => (
              <MatrixRow
                key={axis.id}
                {...{ code, axis, row, asOf }}
                isChosen={chosen.has(axis.id)}
                onChoose={mayMark ? () => choose(axis.id) : null}
                onPress={
                  mayMark
                    ? (step: AxisStepKind, isDone: boolean) =>
                        (isDone ? marks.unmark : marks.mark)([axis.id], step)
                    : null
                }
              />
            ))}
          </tbody>
        </table>
      </div>
      <p className="mt-2 text-ink-2 text-sm">
        ● done, ○ open, – stays as it is.{" "}
        {mayMark ? "Arrow keys walk the cells, space or Enter marks. Tick axes to mark a whole column." : ""}
      </p>
      <ChangeDone change={change} />
    </Section>
  );
}

interface StepHeadProps {
  readonly word: string;
  readonly done: number;
  readonly total: number;
  readonly onMark: (() => void) | null;
  readonly onUnmark: (() => void) | null;
}

/** A step with how many axes have done it; with axes chosen, it marks them all. */
function StepHead({ word, done, total, onMark, onUnmark }: StepHeadProps) {
  return (
    <>
      {word}
      <span className="unit block">{`${done} of ${total}`}</span>
      {onMark && onUnmark ? (
        <span className="no-print mt-1 flex gap-1">
          <Button className="px-2" aria-label={`Mark chosen axes ${word.toLowerCase()}`} onClick={onMark}>
            ●
          </Button>
          <Button
            className="px-2"
            kind="quiet"
            aria-label={`Take ${word.toLowerCase()} back of chosen axes`}
            onClick={onUnmark}
          >
            ○
          </Button>
        </span>
      ) : null}
    </>
  );
}

interface RoundsProps {
  readonly count: number;
  readonly onRound: (round: number) => void;
}

const ROUNDS = [1, 2, 3, 4, 0] as const;

/** Puts the chosen axes into a round of the project, or leaves them as they are. */
function Rounds({ count, onRound }: RoundsProps) {
  return (
    <label className="grid gap-1">
      <span className="font-semibold text-[0.9375rem]">{`Round of the ${count} chosen`}</span>
      <select
        className="input"
        value=""
        disabled={count === 0}
        onChange={(event) => onRound(Number(event.target.value))}
      >
        <option value="" disabled>
          Choose
        </option>
        {ROUNDS.map((round) => (
          <option key={round} value={round}>
            {round === 0 ? "Stays as it is" : `Round ${round}`}
          </option>
        ))}
      </select>
    </label>
  );
}
