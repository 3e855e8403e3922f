import type { ReactNode } from "react";
import { AsOfLink } from "@/app/_ui/AsOfLink";
import { RowTable } from "@/app/_ui/RowTable";
import { Section } from "@/app/_ui/Section";
import type { About, Desk } from "@/app/(workspace)/review/_components/desk";
import { RowButtons } from "@/app/(workspace)/review/_components/RowButtons";
import { count, quantity } from "@/lib/view/number";
import { COUNT_MONTHS, type ReviewFigures, transferWay } from "@/lib/view/review";
import { day, distance } from "@/lib/view/time";

interface ShelfSectionProps {
  readonly desk: Desk;
  readonly figures: ReviewFigures;
}

/** What of the site's spares hangs: repairs overdue, lots on hold, transfers proposed, counts overdue. */
export function ShelfSection({ desk, figures }: ShelfSectionProps) {
  return (
    <Section title="Repairs, holds, transfers and counts" id="shelf">
      <Repairs desk={desk} figures={figures} />
      <Holds desk={desk} figures={figures} />
      <Transfers desk={desk} figures={figures} />
      <Counts desk={desk} figures={figures} />
    </Section>
  );
}

function Repairs({ desk, figures: { repairs, asOf } }: ShelfSectionProps) {
  if (repairs.length === 0) return <p>No repair is overdue.</p>;
  return (
    <RowTable
      caption="Repairs overdue"
      heads={["Repair overdue", "Order", "Sent", "Due", { text: "To do", print: false }]}
    >
      {repairs.map(({ reference, partId, number, serial, sentOn, dueOn }) => (
        <tr key={reference}>
          <PartHead partId={partId} number={number} />
          <td>{serial === null ? reference : `${reference}, serial ${serial}`}</td>
          <td>{day(sentOn)}</td>
          <td>{`${day(dueOn)}, ${distance(dueOn, asOf)}`}</td>
          <Buttons
            desk={desk}
            about={{ partId, lineId: null, text: `Repair ${reference} of ${number}` }}
            name={`${number} ${reference}`}
          />
        </tr>
      ))}
    </RowTable>
  );
}

function Holds({ desk, figures: { holds } }: ShelfSectionProps) {
  if (holds.length === 0) return <p className="mt-4">No lot is on hold.</p>;
  return (
    <div className="mt-5">
      <RowTable
        caption="Lots on hold"
        heads={["On hold", "Bin", { text: "Pieces", end: true }, "Why", { text: "To do", print: false }]}
      >
        {holds.map(({ lotId, partId, number, bin, quantity: pieces, note }) => (
          <tr key={lotId}>
            <PartHead partId={partId} number={number} />
            <td>{bin}</td>
            <td data-align="end">{pieces === null ? "not counted" : quantity(pieces)}</td>
            <td>{note ?? "not written down"}</td>
            <Buttons
              desk={desk}
              about={{ partId, lineId: null, text: `Hold on ${number} in ${bin}` }}
              name={`${number} in ${bin}`}
            />
          </tr>
        ))}
      </RowTable>
    </div>
  );
}

function Transfers({ desk, figures: { transfers } }: ShelfSectionProps) {
  if (transfers.length === 0) return <p className="mt-4">No transfer waits for a yes.</p>;
  return (
    <div className="mt-5">
      <RowTable
        caption="Transfers proposed"
        heads={["Transfer proposed", "Way", { text: "Pieces", end: true }, { text: "To do", print: false }]}
      >
        {transfers.map(({ id, partId, number, pieces, way }) => (
          <tr key={id}>
            <PartHead partId={partId} number={number} />
            <td>{transferWay(way)}</td>
            <td data-align="end">{quantity(pieces)}</td>
            <Buttons
              desk={desk}
              about={{ partId, lineId: null, text: `Transfer of ${number} ${transferWay(way)}` }}
              name={`${number} ${transferWay(way)}`}
            />
          </tr>
        ))}
      </RowTable>
    </div>
  );
}

function Counts({ desk, figures: { uncounted } }: ShelfSectionProps) {
  const { lots, of, first } = uncounted;
  const rule = `for ${COUNT_MONTHS} months (common practice for slow movers, no source)`;
  if (lots === 0) return <p className="mt-4">{`No lot of ${of} went uncounted ${rule}.`}</p>;
  return (
    <div className="mt-5">
      <p className="mb-2">{`${count(lots, "lot")} of ${of} went uncounted ${rule}; the longest first.`}</p>
      <RowTable
        caption="Counts overdue"
        heads={["Count overdue", "Bin", "Last counted", { text: "To do", print: false }]}
      >
        {first.map(({ lotId, partId, number, bin, countedOn }) => (
          <tr key={lotId}>
            <PartHead partId={partId} number={number} />
            <td>{bin}</td>
            <td>{countedOn === null ? "never" : day(countedOn)}</td>
            <Buttons
              desk={desk}
              about={{ partId, lineId: null, text: `Count ${number} in ${bin}` }}
              name={`${number} in ${bin}`}
            />
          </tr>
        ))}
      </RowTable>
    </div>
  );
}

function PartHead({ partId, number }: { readonly partId: string; readonly number: string }): ReactNode {
  return (
    <th scope="row">
      <AsOfLink href={`/parts/${partId}`} className="row-link" data-row-link="">
        {number}
      </AsOfLink>
    </th>
  );
}

function Buttons(props: { readonly desk: Desk; readonly about: About; readonly name: string }) {
  return <RowButtons {...props} reason={props.about.text} />;
}
