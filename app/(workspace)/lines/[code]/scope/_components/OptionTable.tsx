import { RowTable } from "@/app/_ui/RowTable";
import type { ScopeOption } from "@/lib/retrofit/scope/scopeOptions";
import { knownWords, moneyNorm, normWords } from "@/lib/view/lineScope";
import { count, plainNumber } from "@/lib/view/number";

const HEADS = ["Way", "Cost", "Work, weeks", "Lead, weeks", "In the way", "Sets free"];

/** The ways to treat the line beside each other. */
export function OptionTable({ options }: { readonly options: readonly ScopeOption[] }) {
  return (
    <RowTable caption="Ways to treat the line" heads={HEADS}>
      {options.map(({ id, name, purpose, cost, weeks, lead, blockers, released }) => (
        <tr key={id}>
          <th scope="row">
            {name}
            <span className="measure block font-normal text-ink-2 text-sm">{purpose}</span>
          </th>
          <td>{knownWords(cost, moneyNorm)}</td>
          <td>{knownWords(weeks, (value) => normWords(value, 1))}</td>
          <td>{knownWords(lead, (value) => plainNumber(value))}</td>
          <td>{blockers.length === 0 ? "nothing on record" : blockers.join("; ")}</td>
          <td>
            {count(
              released.reduce((sum, { units }) => sum + units, 0),
              "drive",
            )}
          </td>
        </tr>
      ))}
    </RowTable>
  );
}
