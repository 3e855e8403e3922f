import { RowTable } from "@/app/_ui/RowTable";
import { SpanBar } from "@/app/_ui/SpanBar";
import type { CountedShare, RepairRecord } from "@/lib/spares/repairRecord";
import { percent } from "@/lib/view/chance";
import { NOT_KNOWN, plainNumber, quantity } from "@/lib/view/number";
import type { RepairOrder } from "@/lib/view/repair";

const HEADS = [
  "Part",
  "Repairer",
  { text: "Back", end: true },
  { text: "Out", end: true },
  "Usable again",
  { text: "No fault found", end: true },
  { text: "Days away", end: true },
  { text: "Sent again soon", end: true },
] as const;

function Share({ share }: { readonly share: CountedShare | null }) {
  if (share === null) return <span className="text-ink-3">none back</span>;
  const text = `${percent(share.mean)} (${percent(share.low)} to ${percent(share.high)})`;
  return (
    <span className="flex items-center gap-2">
      <SpanBar {...share} max={1} text={text} />
      <span className="whitespace-nowrap">{text}</span>
    </span>
  );
}

interface RecordTableProps {
  readonly records: readonly RepairRecord[];
  readonly orders: readonly RepairOrder[];
}

/** What came of the trips, by part and repairer. */
export function RecordTable({ records, orders }: RecordTableProps) {
  const numbers = new Map(orders.map(({ partId, part }) => [partId, part]));
  const named = records
    .map((record) => ({ ...record, part: numbers.get(record.partId) ?? "" }))
    .sort((a, b) => `${a.part} ${a.repairer}`.localeCompare(`${b.part} ${b.repairer}`, "en-GB"));
  if (named.length === 0) return <p>No trip to a repairer is on record.</p>;
  return (
    <RowTable caption="Repairs by part and repairer" heads={HEADS}>
      {named.map((record) => (
        <tr key={`${record.partId} ${record.repairer}`}>
          <th scope="row">{record.part}</th>
          <td>{record.repairer ?? NOT_KNOWN}</td>
          <td data-align="end">{plainNumber(record.back)}</td>
          <td data-align="end">{plainNumber(record.out)}</td>
          <td>
            <Share share={record.usable} />
          </td>
          <td data-align="end">
            {record.noFaultFound === null ? "none back" : percent(record.noFaultFound.mean)}
          </td>
          <td data-align="end">
            {record.days === null
              ? "none back"
              : `${quantity(record.days.median)} (${plainNumber(record.days.shortest)} to ${plainNumber(record.days.longest)})`}
          </td>
          <td data-align="end">{plainNumber(record.again)}</td>
        </tr>
      ))}
    </RowTable>
  );
}
