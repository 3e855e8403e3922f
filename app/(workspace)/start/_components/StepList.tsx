import { LinkButton } from "@/app/_ui/LinkButton";
import type { FirstStep } from "@/lib/view/firstSteps";

interface StepListProps {
  readonly steps: readonly FirstStep[];
  readonly mayLoad: boolean;
}

/** What to do in which order; the first that is open leads. */
export function StepList({ steps, mayLoad }: StepListProps) {
  const first = steps.find(({ isDone }) => !isDone);
  return (
    <ol className="grid border-rule-2 border-t">
      {steps.map((step, place) => (
        <li
          key={step.key}
          className={`grid gap-x-6 gap-y-2 border-rule-2 border-b py-4 sm:grid-cols-[2.5rem_minmax(0,1fr)_max-content] ${step === first ? "bg-shade px-3" : ""}`}
          aria-current={step === first ? "step" : undefined}
        >
          <Mark place={place + 1} isDone={step.isDone} />
          <div>
            <h2 className="font-semibold text-lg">{step.title}</h2>
            <p className="measure">{step.why}</p>
            <p className="text-ink-2 text-sm">{step.isDone ? "Done." : step.doneWhen}</p>
          </div>
          <Ways step={step} mayLoad={mayLoad} leads={step === first} />
        </li>
      ))}
    </ol>
  );
}

function Ways({ step, mayLoad, leads }: { step: FirstStep; mayLoad: boolean; leads: boolean }) {
  if (step.register !== undefined && !mayLoad)
    return <p className="text-ink-2 text-sm">Your role does not load files; ask a planner or an engineer.</p>;
  return (
    <div className="flex flex-wrap content-start gap-2">
      <LinkButton href={step.href} kind={leads ? "primary" : "plain"}>
        {step.register === undefined ? "Go there" : "Load a file"}
      </LinkButton>
      {step.register === undefined ? null : (
        <LinkButton href={`/api/import/pattern?register=${step.register}`} download>
          Pattern (.csv)
        </LinkButton>
      )}
    </div>
  );
}

/** A tick in a full circle is done, a number in an empty one is not. */
function Mark({ place, isDone }: { readonly place: number; readonly isDone: boolean }) {
  return (
    <span
      className={`inline-flex size-8 items-center justify-center rounded-full border-2 border-ink font-semibold ${isDone ? "bg-ink text-sheet" : ""}`}
    >
      <span aria-hidden="true">{isDone ? "✓" : place}</span>
      <span className="sr-only">{isDone ? "Done" : "Open"}</span>
    </span>
  );
}
