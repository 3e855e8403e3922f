import { AsOfLink } from "@/app/_ui/AsOfLink";
import { movedSteps } from "@/lib/view/moved";
import type { WorsePart } from "@/lib/view/review";
import { stepRows, whyText } from "@/lib/view/reviewWords";

interface WhyStepsProps {
  readonly part: WorsePart;
  readonly showsAmounts: boolean;
}

/** The step that mattered most in a line; opened, all steps with the inputs behind them. */
export function WhySteps({ part, showsAmounts }: WhyStepsProps) {
  return (
    <details className="disclosure prints">
      <summary>{whyText(part)}</summary>
      <table className="table mt-2">
        <caption className="sr-only">{`Steps of ${part.number}`}</caption>
        <thead>
          <tr>
            <th scope="col" className="label">
              Step
            </th>
            <th scope="col" className="label" data-align="end">
              Chance, points
            </th>
            {showsAmounts ? (
              <th scope="col" className="label" data-align="end">
                Loss, € a year
              </th>
            ) : null}
            <th scope="col" className="label" data-align="end">
              Usable, pieces
            </th>
          </tr>
        </thead>
        <tbody>
          {stepRows(part).map(({ name, noSpare, loss, usable }) => (
            <tr key={name}>
              <th scope="row">{name}</th>
              <td data-align="end">{noSpare}</td>
              {showsAmounts ? <td data-align="end">{loss}</td> : null}
              <td data-align="end">{usable}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <Inputs part={part} />
    </details>
  );
}

function Inputs({ part: { inputs } }: { readonly part: WorsePart }) {
  if (inputs.length === 0) return <p className="mt-2 text-sm">Nothing recorded of this part changed.</p>;
  return (
    <ul className="mt-2 list-disc pl-5 text-sm">
      {inputs.map(({ step, subject, what, before, after, href }) => (
        <li key={`${subject} ${what}`}>
          {`${movedSteps.find((one) => one.step === step)?.name ?? ""}: `}
          {href === null ? subject : <AsOfLink href={href}>{subject}</AsOfLink>}
          {`, ${what} ${before} → ${after}`}
        </li>
      ))}
    </ul>
  );
}
