import { RowTable } from "@/app/_ui/RowTable";
import type { ScopeOption } from "@/lib/retrofit/scope/scopeOptions";
import { knownWords, moneyNorm, normWords } from "@/lib/view/lineScope";
import { count, plainNumber } from "@/lib/view/number";

const headsOf = (showsAmounts: boolean) => [
  ...["Way", ...(showsAmounts ? ["Cost"] : [])],
  ...["Work, weeks", "Lead, weeks", "In the way", "Sets free"],
];

interface OptionTableProps {
  readonly options: readonly ScopeOption[];
  readonly showsAmounts: boolean;
}

/** The ways to treat the line beside each other. */
export function OptionTable({ options, showsAmounts }: OptionTableProps) {
  return (
    <RowTable caption="Ways to treat the line" heads={headsOf(showsAmounts)}>
      {options.map(({ id, name, purpose, cost, weeks, lead, blockers, released }) => (
        <tr key={id}>
          <th scope="row">
            {name}
            <span className="measure block font-normal text-ink-2 text-sm">{purpose}</span>
          </th>
          {showsAmounts ? <td>{knownWords(cost, moneyNorm)}</td> : null}
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
