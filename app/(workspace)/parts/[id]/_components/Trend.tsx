import { RowTable } from "@/app/_ui/RowTable";
import { EventTimeline } from "@/app/(workspace)/parts/[id]/_components/EventTimeline";
import { count } from "@/lib/view/number";
import type { PartDossier } from "@/lib/view/partDossier";
import { countEvents } from "@/lib/view/partEvent";
import type { Kind, KindTrend, PartExperience } from "@/lib/view/partExperience";
import { timeMarks, trendFigures, trendWords } from "@/lib/view/partTrend";
import { day } from "@/lib/view/time";

interface TrendProps {
  readonly part: PartDossier;
  readonly experience: PartExperience;
}

const KINDS: readonly (readonly [Kind, string])[] = [
  ["failures", "Failures"],
  ["removals", "Removals"],
];

/** Whether failures and removals come faster, with the events as marks on a line of time. */
export function Trend({ part, experience }: TrendProps) {
  const { trends, elsewhere, events, since } = experience;
  const marks = timeMarks(countEvents(events), { from: since, until: part.asOf }, day);
  return (
    <>
      <h3 className="mt-6 mb-2 font-semibold">Does the rate move?</h3>
      <RowTable
        caption="Trend of failures and removals"
        heads={["Of", "What the records say", "Laplace test", "Power law"]}
      >
        {KINDS.map(([kind, name]) => (
          <TrendRow key={kind} name={name} kind={kind} trend={trends[kind]} />
        ))}
      </RowTable>
      <EventTimeline marks={marks} from={since} until={part.asOf} />
      {elsewhere === null ? null : (
        <p>
          At other sites: {count(elsewhere.removals, "removal")}, {count(elsewhere.failures, "failure")} of
          them. They are in the tests, not on the line of time.
        </p>
      )}
      <p className="measure mt-2 text-ink-2 text-sm">
        The clock of the tests is the time in service of all units together, so that a growing number of units
        is no trend. Laplace: u above 0 is faster, called a change at p below 0.05, both ends (NIST/SEMATECH
        e-Handbook 8.2.3.4). Power law: β above 1 is faster. The rates above do not follow a trend; this tells
        of it.
      </p>
    </>
  );
}

interface TrendRowProps {
  readonly name: string;
  readonly kind: Kind;
  readonly trend: KindTrend;
}

function TrendRow({ name, kind, trend }: TrendRowProps) {
  const figures = trendFigures(trend);
  const before =
    trend.before === 0 ? "" : ` ${count(trend.before, "event")} before any unit was in service left out.`;
  return (
    <tr>
      <th scope="row">{name}</th>
      <td>
        {trendWords(trend, kind)}
        {before}
      </td>
      <td className="whitespace-nowrap">{figures?.laplace ?? "–"}</td>
      <td className="whitespace-nowrap">{figures?.power ?? "–"}</td>
    </tr>
  );
}
