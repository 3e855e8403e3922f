import { AsOfLink } from "@/app/_ui/AsOfLink";
import { Delta } from "@/app/_ui/Delta";
import { type MovedLook, moneyKind, movedSteps, signedMoney, type ToldInput } from "@/lib/view/moved";
import { count, plainNumber } from "@/lib/view/number";

const MOST_ROWS = 200;

/** The inputs behind each step, opened on demand. */
export function StepInputs({ look }: { readonly look: MovedLook }) {
  return (
    <div>
      {movedSteps.map(({ step, name, about }) => {
        const inputs = look.inputs.filter((input) => input.step === step);
        const euros = look.total.steps[step];
        return (
          <details key={step} className="disclosure prints border-rule border-b">
            <summary className="flex flex-wrap items-baseline gap-x-4 py-2">
              <span className="font-semibold">{name}</span>
              <Delta kind={moneyKind(euros)} text={`${signedMoney(euros)} a year`} />
              <span className="text-ink-2">{count(inputs.length, "changed input")}</span>
            </summary>
            <p className="text-ink-2 text-sm">{about}</p>
            {inputs.length === 0 ? (
              <p className="py-2">Nothing recorded changed here.</p>
            ) : (
              <InputTable name={name} inputs={inputs} />
            )}
          </details>
        );
      })}
    </div>
  );
}

function InputTable({ name, inputs }: { readonly name: string; readonly inputs: readonly ToldInput[] }) {
  const more = inputs.length - MOST_ROWS;
  return (
    <div className="overflow-x-auto pb-3">
      <table className="table">
        <caption className="sr-only">{`Changed inputs: ${name}`}</caption>
        <thead>
          <tr>
            <th scope="col" className="label">
              What
            </th>
            <th scope="col" className="label">
              Value
            </th>
            <th scope="col" className="label">
              Before → after
            </th>
          </tr>
        </thead>
        <tbody>
          {inputs.slice(0, MOST_ROWS).map(({ subject, what, before, after, href }) => (
            <tr key={`${subject} ${what}`}>
              <th scope="row">{href === null ? subject : <AsOfLink href={href}>{subject}</AsOfLink>}</th>
              <td>{what}</td>
              <td>{`${before} → ${after}`}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {more > 0 ? <p className="py-2 text-ink-2">{`and ${plainNumber(more)} more`}</p> : null}
    </div>
  );
}
