import type { ReactNode } from "react";

export interface DerivationStep {
  readonly label: string;
  /** With the numbers put in, e.g. `0.041 × 52`. */
  readonly formula?: string;
  readonly value: string;
  readonly unit?: string;
  /** Where the step's input comes from, an `EvidenceMark`, a link. */
  readonly source?: ReactNode;
}

interface DerivationProps {
  /** What is worked out, e.g. `How the stop loss is worked out`. */
  readonly title: string;
  readonly steps: readonly DerivationStep[];
  /** Open at first; a page about the figure opens it. */
  readonly open?: boolean;
  /** Method, limits and sources under the steps. */
  readonly children?: ReactNode;
  readonly id?: string;
}

/** A figure's arithmetic, opened on demand; printed whole. The last step is the result. */
export function Derivation({ title, steps, open = false, children, id }: DerivationProps) {
  return (
    <details id={id} open={open} className="disclosure prints my-3 border-rule border-y">
      <summary className="py-2 font-semibold">{title}</summary>
      <div className="overflow-x-auto pb-3">
        <table className="table">
          <caption className="sr-only">{title}</caption>
          <thead>
            <tr>
              <th scope="col" className="label">
                Step
              </th>
              <th scope="col" className="label">
                Arithmetic
              </th>
              <th scope="col" className="label" data-align="end">
                Result
              </th>
              <th scope="col" className="label">
                Source
              </th>
            </tr>
          </thead>
          <tbody>
            {steps.map((step, place) => (
              <tr key={step.label} className={place === steps.length - 1 ? "font-semibold" : undefined}>
                <th scope="row">{step.label}</th>
                <td className="text-ink-2">{step.formula}</td>
                <td data-align="end">
                  {step.value}
                  {step.unit ? <span className="font-normal text-ink-2"> {step.unit}</span> : null}
                </td>
                <td className="font-normal text-ink-2 text-sm">{step.source}</td>
              </tr>
            ))}
          </tbody>
        </table>
        {children ? <div className="measure mt-2 text-ink-2 text-sm">{children}</div> : null}
      </div>
    </details>
  );
}
