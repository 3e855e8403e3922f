import type { ThingCount } from "@/lib/view/importChanges";
import { plainNumber } from "@/lib/view/number";

interface Props {
  readonly things: readonly ThingCount[];
  /** Whether the things that stay as they are were counted. */
  readonly unchangedKnown: boolean;
}

/** New, changed and unchanged things by kind. */
export function ThingCounts({ things, unchangedKnown }: Props) {
  if (things.length === 0) return <p className="text-ink-2">Nothing in the registers is added or changed.</p>;
  const heads = ["Added", "Changed", ...(unchangedKnown ? ["As stored"] : [])];
  return (
    <table className="table max-w-2xl">
      <caption className="sr-only">Things by kind</caption>
      <thead>
        <tr>
          <th scope="col" className="label">
            Kind of thing
          </th>
          {heads.map((head) => (
            <th key={head} scope="col" className="label" data-align="end">
              {head}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {things.map(({ entity, label, added, changed, unchanged }) => (
          <tr key={entity}>
            <th scope="row">{label}</th>
            <td data-align="end">{plainNumber(added)}</td>
            <td data-align="end">{plainNumber(changed)}</td>
            {unchangedKnown ? <td data-align="end">{plainNumber(unchanged)}</td> : null}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
