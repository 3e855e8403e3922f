import { AsOfLink } from "@/app/_ui/AsOfLink";
import { RowTable } from "@/app/_ui/RowTable";
import { Section } from "@/app/_ui/Section";
import { StaleMark } from "@/app/_ui/StaleMark";
import type { Desk } from "@/app/(workspace)/review/_components/desk";
import { RowButtons } from "@/app/(workspace)/review/_components/RowButtons";
import { daysBetween } from "@/lib/kernel/isoDate";
import { type DateAhead, dateKindName } from "@/lib/view/datesAhead";
import { plainNumber } from "@/lib/view/number";
import { REVIEW_SPANS, type ReviewFigures, spanOf } from "@/lib/view/review";
import { day, distance } from "@/lib/view/time";

interface DateSectionProps {
  readonly desk: Desk;
  readonly figures: ReviewFigures;
}

/** The part of a link to a part that names it; a family's dates are said of many parts. */
const partIn = (href: string) => /^\/parts\/([0-9a-f-]{36})$/.exec(href)?.[1] ?? null;

const spanWords = (span: ReturnType<typeof spanOf>) => (span === 0 ? "passed" : `within ${span} days`);

/** Last orders with the own order-by day, last shipments and ends of repair within the spans talked about. */
export function DateSection({ desk, figures: { dates, asOf } }: DateSectionProps) {
  const last = REVIEW_SPANS[2];
  return (
    <Section
      title={`Orders and repairs that end within ${last} days`}
      id="dates"
      lead="Order by: the last order at the maker less the time the own purchase takes. A day that was missed stays while the maker still takes orders."
    >
      {dates.length === 0 ? (
        <p>{`No part installed here has such a day within ${last} days.`}</p>
      ) : (
        <RowTable
          caption="Dates of supply ahead"
          heads={[
            "Of",
            "Day",
            "When",
            "What",
            { text: "Units here", end: true },
            { text: "To do", print: false },
          ]}
        >
          {dates.map((date) => (
            <Row key={date.key} date={date} desk={desk} asOf={asOf} />
          ))}
        </RowTable>
      )}
    </Section>
  );
}

function Row({ date, desk, asOf }: { readonly date: DateAhead; readonly desk: Desk; readonly asOf: string }) {
  const { of, on, kind, what, href, units, overdue } = date;
  const text = `${dateKindName(kind)} ${of}: ${day(on)}`;
  return (
    <tr>
      <th scope="row">
        <AsOfLink href={href} className="row-link" data-row-link="">
          {of}
        </AsOfLink>
      </th>
      <td className="whitespace-nowrap">
        <time dateTime={on}>{day(on)}</time> {overdue ? <StaleMark text="Passed" /> : null}
      </td>
      <td>
        {distance(on, asOf)}, {spanWords(spanOf(daysBetween(asOf, on)))}
      </td>
      <td>{what}</td>
      <td data-align="end">{units === null ? "–" : plainNumber(units)}</td>
      <RowButtons desk={desk} about={{ partId: partIn(href), lineId: null, text }} name={of} reason={text} />
    </tr>
  );
}
