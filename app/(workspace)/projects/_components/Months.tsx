import { daysBetween } from "@/lib/kernel/isoDate";
import { month } from "@/lib/view/time";

interface MonthsProps {
  /** First day of the time line, and how many days it has. */
  readonly from: string;
  readonly days: number;
  /** First day of each month of it. */
  readonly months: readonly string[];
}

const MOST_NAMED = 9;

/** The months over bars of one time line; where they are narrow, not every one is named. */
export function Months({ from, days, months }: MonthsProps) {
  const every = Math.ceil(months.length / MOST_NAMED);
  return (
    <>
      <span className="sr-only">Time line</span>
      <span className="relative block h-5 w-full" aria-hidden="true">
        {months.map((at, i) =>
          i % every === 0 ? (
            <span
              key={at}
              className="absolute bottom-0 whitespace-nowrap font-normal normal-case"
              style={{ left: `${(100 * daysBetween(from, at)) / days}%` }}
            >
              {month(at)}
            </span>
          ) : null,
        )}
      </span>
    </>
  );
}
