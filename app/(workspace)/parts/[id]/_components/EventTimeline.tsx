import type { IsoDate } from "@/lib/kernel/isoDate";
import { count } from "@/lib/view/number";
import type { TimeMark } from "@/lib/view/partTrend";
import { day } from "@/lib/view/time";

interface EventTimelineProps {
  readonly marks: readonly TimeMark[];
  readonly from: IsoDate;
  readonly until: IsoDate;
}

const WIDTH = 720;
const INSET = 10;
const MIDDLE = 18;

/** The events that count on a line of time: filled a failure, open a removal without one, larger a burst of one cause. */
export function EventTimeline({ marks, from, until }: EventTimelineProps) {
  if (marks.length === 0) return <p className="mt-3">No event at your sites to put on a line of time.</p>;
  const failures = marks.filter(({ failure }) => failure).length;
  const bursts = marks.filter(({ events }) => events > 1).length;
  const title = `${count(failures, "failure")} and ${count(marks.length - failures, "removal")} without a fault, ${day(from)} to ${day(until)}${bursts === 0 ? "" : `; ${count(bursts, "burst")} of one cause, each one mark`}`;
  return (
    <figure className="mt-3 mb-2">
      <svg role="img" aria-label={title} viewBox={`0 0 ${WIDTH} 36`} className="block w-full max-w-3xl">
        <line x1={INSET} x2={WIDTH - INSET} y1={MIDDLE} y2={MIDDLE} stroke="var(--rule-2)" />
        {marks.map(({ id, at, failure, events, words }) => (
          <circle
            key={id}
            cx={INSET + at * (WIDTH - 2 * INSET)}
            cy={MIDDLE}
            r={events > 1 ? 8 : 5}
            fill={failure ? "var(--money-4)" : "var(--sheet)"}
            fillOpacity={failure ? 0.75 : 1}
            stroke="var(--money-5)"
          >
            <title>{words}</title>
          </circle>
        ))}
      </svg>
      <figcaption className="flex max-w-3xl flex-wrap justify-between gap-x-4 text-ink-2 text-sm">
        <span>{day(from)}</span>
        <span>
          filled: failure · open: removal, no fault found · large: several of one cause, counted once
        </span>
        <span>{day(until)}</span>
      </figcaption>
    </figure>
  );
}
