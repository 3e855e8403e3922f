import { AsOfLink } from "@/app/_ui/AsOfLink";
import { STEPS_OF_RECORD } from "@/lib/projects/axisSteps";
import type { AxisStepKind } from "@/lib/schema/axisStep";
import { axisStepChoices, type SteppedAxis } from "@/lib/view/axisSteps";
import { day } from "@/lib/view/time";

interface MatrixRowProps {
  readonly code: string;
  readonly axis: SteppedAxis;
  /** Place in the matrix, from 0. */
  readonly row: number;
  readonly asOf: string;
  readonly isChosen: boolean;
  readonly onChoose: (() => void) | null;
  /** Null shows without letting change. */
  readonly onPress: ((step: AxisStepKind, isDone: boolean) => void) | null;
}

const CELL =
  "inline-flex min-h-9 min-w-9 items-center justify-center no-underline max-sm:min-h-11 max-sm:min-w-11";

/** One axis with its steps. */
export function MatrixRow({ code, axis, row, asOf, isChosen, onChoose, onPress }: MatrixRowProps) {
  const name = `${axis.machineCode} ${axis.code}`;
  return (
    <tr data-fifth={row % 5 === 4 ? "" : undefined}>
      <th scope="row">
        <span className="inline-flex items-center gap-2">
          {onChoose ? (
            <input
              type="checkbox"
              className="tick"
              aria-label={`Choose ${name}`}
              checked={isChosen}
              onChange={onChoose}
            />
          ) : null}
          <AsOfLink href={`/projects/${code}/axes/${axis.id}`}>{name}</AsOfLink>
        </span>
        <span className="block text-ink-2 text-sm">{axis.name ?? axis.machineName}</span>
      </th>
      <td>{axis.round === 0 ? "–" : axis.round}</td>
      {axisStepChoices.map(({ step }, column) => (
        <td key={step}>
          <StepCell
            {...{ code, axis, step, asOf, onPress, place: { "data-row": row, "data-column": column } }}
          />
        </td>
      ))}
    </tr>
  );
}

interface StepCellProps extends Pick<MatrixRowProps, "code" | "axis" | "asOf" | "onPress"> {
  readonly step: AxisStepKind;
  readonly place: { readonly "data-row": number; readonly "data-column": number };
}

/** One step of an axis: pressed by hand, or by its record where there is one. */
function StepCell({ code, axis, step, asOf, onPress, place }: StepCellProps) {
  const done = axis.steps[step];
  const isDone = done !== undefined && done.on <= asOf;
  const name = `${axis.machineCode} ${axis.code} ${step}`;
  const words = isDone ? `${name}: ${day(done.on)}, ${done.by}` : `${name}: open`;
  if (axis.round === 0) return <span className={CELL}>–</span>;
  const shown = { ...place, title: words, className: CELL, children: isDone ? "●" : "○" };
  if (axis.hasRecord && STEPS_OF_RECORD.includes(step))
    return (
      <AsOfLink
        href={`/projects/${code}/axes/${axis.id}`}
        aria-label={`${words}, by its record`}
        {...shown}
      />
    );
  return onPress ? (
    <button
      type="button"
      aria-pressed={isDone}
      aria-label={words}
      onClick={() => onPress(step, isDone)}
      {...shown}
    />
  ) : (
    <span role="img" aria-label={words} {...shown} />
  );
}
