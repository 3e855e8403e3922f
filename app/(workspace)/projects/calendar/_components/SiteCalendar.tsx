import { AsOfLink } from "@/app/_ui/AsOfLink";
import { Notice } from "@/app/_ui/Notice";
import { Section } from "@/app/_ui/Section";
import { Months } from "@/app/(workspace)/projects/_components/Months";
import { daysBetween } from "@/lib/kernel/isoDate";
import { count } from "@/lib/view/number";
import {
  type CalendarRow,
  type CalendarSiteView,
  type CalendarView,
  shutdownWords,
} from "@/lib/view/projectCalendar";
import { dayRange } from "@/lib/view/time";

interface SiteCalendarProps {
  readonly site: CalendarSiteView;
  readonly view: CalendarView;
  readonly asOf: string;
}

/** A site's shutdowns and the work laid into them, with what does not go together in words. */
export function SiteCalendar({ site, view, asOf }: SiteCalendarProps) {
  return (
    <Section title={`${site.code} ${site.name}`}>
      {site.clashes.length > 0 ? (
        <Notice kind="caution" title="Clashes">
          <ul className="list-disc pl-5">
            {site.clashes.map((text) => (
              <li key={text}>{text}</li>
            ))}
          </ul>
        </Notice>
      ) : null}
      <div className="table-frame">
        <table className="table">
          <caption className="sr-only">{`Shutdowns and projects of ${site.name}`}</caption>
          <thead>
            <tr>
              <th scope="col" className="label">
                Project
              </th>
              <th scope="col" className="label">
                Work in a shutdown
              </th>
              <th scope="col" className="label">
                <Months {...view} />
              </th>
            </tr>
          </thead>
          <tbody>
            <tr>
              <th scope="row">Shutdowns</th>
              <td>
                {site.windows.length === 0
                  ? "none on record ahead"
                  : site.windows.map((one) => (
                      <span key={one.id} className="block">
                        {shutdownWords(one)}
                      </span>
                    ))}
              </td>
              <td className="w-1/2 min-w-[24rem] print:min-w-0">
                <Bars {...{ site, view, asOf }} row={null} />
              </td>
            </tr>
            {site.rows.map((row) => (
              <tr key={row.code}>
                <th scope="row">
                  <AsOfLink href={`/projects/${row.code}/schedule`} className="row-link">
                    {row.code}
                  </AsOfLink>
                  <span className="block text-ink-2 text-sm">{row.name}</span>
                </th>
                <td>
                  {row.tasks.map(({ task, now }) => (
                    <span key={task.id} className="block">
                      {`${now.outsideWindow ? "▲ " : ""}${task.code} ${dayRange(now.start, now.finish)}, ${count(task.crews, "crew")}`}
                    </span>
                  ))}
                </td>
                <td>
                  <Bars {...{ site, view, asOf, row }} />
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </Section>
  );
}

/** The shutdowns as bands, and the work of one project on them. */
function Bars({ site, view, asOf, row }: SiteCalendarProps & { readonly row: CalendarRow | null }) {
  const at = (day: string) => Math.max(0, daysBetween(view.from, day));
  const bar = (from: string, to: string) => ({ x: at(from), width: Math.max(0, at(to) + 1 - at(from)) });
  const words = row === null ? `Shutdowns of ${site.code}` : `Work of ${row.code} in shutdowns`;
  return (
    <svg
      role="img"
      aria-label={words}
      viewBox={`0 0 ${view.days} 24`}
      preserveAspectRatio="none"
      className="block h-7 w-full"
    >
      <title>{words}</title>
      {site.windows.map(({ id, startsOn, endsOn }) => (
        <rect
          key={id}
          {...bar(startsOn, endsOn)}
          y="0"
          height="24"
          fill="var(--accent-soft)"
          stroke={row === null ? "var(--accent)" : "none"}
          vectorEffect="non-scaling-stroke"
        />
      ))}
      {row?.tasks.map(({ task, now }) => (
        <rect
          key={task.id}
          {...bar(now.start, now.finish)}
          y="6"
          height="12"
          fill={now.outsideWindow ? "var(--sheet)" : "var(--money-4)"}
          stroke="var(--money-4)"
          strokeDasharray={now.outsideWindow ? "3 2" : "none"}
          vectorEffect="non-scaling-stroke"
        />
      ))}
      <line
        x1={at(asOf)}
        x2={at(asOf)}
        y1="0"
        y2="24"
        stroke="var(--ink)"
        vectorEffect="non-scaling-stroke"
      />
    </svg>
  );
}
