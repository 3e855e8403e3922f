import { LinkButton } from "@/app/_ui/LinkButton";
import { RowTable } from "@/app/_ui/RowTable";
import { plainNumber } from "@/lib/view/number";
import { type SimulatedMonth, simulatedRow } from "@/lib/view/partSimulation";

const HEADS = [
  "Ahead",
  { text: "Computed", end: true },
  { text: "Simulated", end: true },
  { text: "Chance alone allows", end: true },
  "The two",
];

interface SimulationCheckProps {
  readonly partId: string;
  /** Null is not asked for. */
  readonly months: readonly SimulatedMonth[] | null;
}

/** The computed chance put to the test: removals, repairs and arrivals played event by event. */
export function SimulationCheck({ partId, months }: SimulationCheckProps) {
  if (months === null)
    return (
      <p className="no-print mt-3">
        <LinkButton href={`/parts/${partId}?simulated=yes#simulated`}>Check by simulation</LinkButton>
      </p>
    );
  const [first] = months;
  return (
    <div id="simulated" className="mt-5">
      <h3 className="label mb-2">Checked by simulation</h3>
      <RowTable caption="Computed and simulated chance of an empty shelf" heads={HEADS}>
        {months.map(simulatedRow).map((row) => (
          <tr key={row.ahead}>
            <th scope="row">{row.ahead}</th>
            <td data-align="end">{row.model}</td>
            <td data-align="end">{row.simulated}</td>
            <td data-align="end">{row.error}</td>
            <td>{row.verdict}</td>
          </tr>
        ))}
      </RowTable>
      <p className="measure mt-2 text-ink-2 text-sm">
        {`${plainNumber(first?.runs ?? 0)} histories, one seed a day: rate and working pieces drawn, then each removal, return and arrival in its turn. It shares no formula with the computed chance.`}
      </p>
    </div>
  );
}
