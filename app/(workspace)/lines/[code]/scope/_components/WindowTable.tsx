import { Derivation } from "@/app/_ui/Derivation";
import { RowTable } from "@/app/_ui/RowTable";
import type { Scope } from "@/lib/retrofit/scope/buildScope";
import type { ScopeNorms } from "@/lib/retrofit/scope/scopeNorms";
import { type FittedWindow, fitWords, normWords, windowDays } from "@/lib/view/lineScope";
import { plainNumber } from "@/lib/view/number";
import { day, dayRange } from "@/lib/view/time";

interface WindowTableProps {
  readonly scope: Scope;
  readonly norms: ScopeNorms;
  readonly windows: readonly FittedWindow[];
}

const FITS = { fits: "fits", short: "too short", unknown: "not known" } as const;

/** The windows ahead, each with whether the work fits and when it has to begin. */
export function WindowTable({ scope, norms, windows }: WindowTableProps) {
  return (
    <>
      {windows.length === 0 ? (
        <p>No window of the line or its site is on record, so nothing can be held against one.</p>
      ) : (
        <RowTable caption="Windows ahead" heads={["Window", "Days", "Work", "Sentence", "Begin by"]}>
          {windows.map((one) => {
            const { beginBy, beginByCareful } = windowDays(scope, one);
            return (
              <tr key={one.window.id}>
                <th scope="row" translate="no">
                  {one.window.name}
                </th>
                <td className="whitespace-nowrap">{dayRange(one.window.startsOn, one.window.endsOn)}</td>
                <td>{FITS[one.fit.state]}</td>
                <td className="measure">
                  {fitWords(scope, one)}
                  {one.window.note === null ? null : (
                    <span translate="no" className="block text-ink-2 text-sm">
                      {one.window.note}
                    </span>
                  )}
                </td>
                <td>{`${day(beginBy)}; careful ${day(beginByCareful)}`}</td>
              </tr>
            );
          })}
        </RowTable>
      )}
      <WindowSteps scope={scope} norms={norms} />
    </>
  );
}

function WindowSteps({ scope, norms }: Pick<WindowTableProps, "scope" | "norms">) {
  const { counts, work } = scope;
  const { spans, plain } = norms;
  const product = (quantity: number, each: readonly [number, number, number]) =>
    `${quantity} × ${normWords(each, 1)}`;
  return (
    <Derivation
      title="How the window hours are worked out"
      steps={[
        {
          label: "Taking out and fitting",
          formula: product(counts.axes, spans.installPerAxis),
          value: normWords(work.install),
          unit: "person-hours",
        },
        {
          label: "Commissioning",
          formula: product(counts.axes, spans.commissioningPerAxis),
          value: normWords(work.commissioning),
          unit: "person-hours",
        },
        {
          label: "Safety validation",
          formula: product(counts.machines, spans.validationPerMachine),
          value: normWords(work.validation),
          unit: "person-hours",
        },
        {
          label: "With the crews at work",
          formula: `sum ÷ (${plain.crews} crews × ${plain.personsPerCrew} persons)`,
          value: normWords(work.clock),
          unit: "hours",
        },
        {
          label: "Enough four times in five",
          formula: "(low + 4 typical + high) ÷ 6 + 0.8416 × (high − low) ÷ 6",
          value: plainNumber(work.planned),
          unit: "hours",
        },
        {
          label: "Working days",
          formula: `÷ ${plain.hoursPerDay} hours a day`,
          value: plainNumber(work.days, 1),
          unit: "days",
        },
      ]}
    >
      {`Fits when the hours are at most ${plain.windowShare} of the usable hours. All low, typical or high together, so the span is wide. The ramp-up after start is not in it.`}
    </Derivation>
  );
}
