import { AsOfLink } from "@/app/_ui/AsOfLink";
import { RowTable } from "@/app/_ui/RowTable";
import { SpanBar } from "@/app/_ui/SpanBar";
import { money, moneyRange, moneySpan } from "@/lib/view/format";
import { NOT_KNOWN } from "@/lib/view/number";
import { type BoardLine, type BoardView, missedDays, type Placed } from "@/lib/view/planBoard";
import { day } from "@/lib/view/time";

const HEADS = [
  "Line",
  "Way",
  "Where",
  { text: "Cost", end: true },
  "Low to high",
  "Order by",
  "Begin by",
  "If it waits",
  { text: "Loss of the line, without → with", end: true },
];

/** Every way that is planned: where, what it costs, by when it has to be ordered and begun. */
export function ChoiceTable({ view }: { readonly view: BoardView }) {
  const { lines, asOf } = view;
  const planned = lines.filter(({ placed }) => placed.length > 0);
  if (planned.length === 0) return <p className="text-ink-2">Nothing is planned yet.</p>;
  const most = Math.max(...planned.flatMap(({ placed }) => placed.map(({ cost }) => cost.high)));
  return (
    <RowTable caption="Planned ways" heads={HEADS}>
      {planned.flatMap((line) =>
        line.placed.map((placed, i) => (
          <ChoiceRow
            key={`${line.lineId}${placed.optionId}`}
            {...{ line, placed, asOf, most, first: i === 0 }}
          />
        )),
      )}
    </RowTable>
  );
}

interface ChoiceRowProps {
  readonly line: BoardLine;
  readonly placed: Placed;
  readonly asOf: string;
  readonly most: number;
  readonly first: boolean;
}

function ChoiceRow({ line, placed, asOf, most, first }: ChoiceRowProps) {
  const { cost, next } = placed;
  const missed = missedDays(placed, asOf);
  const span = { low: cost.low, mean: cost.typical, high: cost.high };
  return (
    <tr>
      <th scope="row">
        <AsOfLink href={`/lines/${line.code}`} className="row-link">
          {line.code}
        </AsOfLink>{" "}
        {first ? line.name : null}
      </th>
      <td>{placed.name}</td>
      <td className="whitespace-nowrap">{placed.slotName}</td>
      <td data-align="end">{money(cost.typical)}</td>
      <td className="whitespace-nowrap">
        <SpanBar {...span} max={most} text={moneySpan(span)} assumed />
        <span className="block text-ink-2 text-sm">{moneyRange(span)}</span>
      </td>
      <DayCell on={placed.orderBy} missed={missed.order} />
      <DayCell on={placed.startBy} missed={missed.start} />
      <td className="text-sm">
        {next
          ? `${next.slotName}: ${money(Math.abs(next.worthLost))} ${next.worthLost >= 0 ? "lost" : "won"}`
          : "no later place"}
      </td>
      <td data-align="end">{first ? `${money(line.without)} → ${money(line.with)}` : null}</td>
    </tr>
  );
}

function DayCell({ on, missed }: { readonly on: string | null; readonly missed: boolean }) {
  if (on === null) return <td className="text-ink-2">{NOT_KNOWN}</td>;
  return (
    <td className={`whitespace-nowrap ${missed ? "font-semibold text-worse" : ""}`}>
      {missed ? "▲ missed: " : ""}
      {day(on)}
    </td>
  );
}
