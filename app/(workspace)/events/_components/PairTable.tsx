import { RowTable } from "@/app/_ui/RowTable";
import type { EventPair, ListedEvent } from "@/lib/view/eventPair";
import { NOT_KNOWN, significant } from "@/lib/view/number";
import { eventKindName } from "@/lib/view/partEvent";
import { day } from "@/lib/view/time";

const hours = (value: number | null) => (value === null ? NOT_KNOWN : `${significant(value, 3)} h`);

const FIELDS: readonly { readonly name: string; readonly of: (event: ListedEvent) => string }[] = [
  { name: "When, at the site", of: (event) => `${day(event.day)}, ${event.time}` },
  { name: "Event", of: ({ kind }) => eventKindName(kind) },
  {
    name: "Machine and place",
    of: ({ machine, place }) => [machine, place].filter(Boolean).join(" ") || NOT_KNOWN,
  },
  { name: "Part", of: ({ part }) => part?.number ?? "names no part" },
  { name: "Stop", of: ({ downtimeHours }) => hours(downtimeHours) },
  { name: "Of it waiting", of: ({ logisticHours }) => hours(logisticHours) },
  { name: "Text", of: ({ text }) => text ?? "" },
];

const nameOf = ({ source, reference }: ListedEvent) => `${source} ${reference}`;

/** Two records side by side; what differs stands out. */
export function PairTable({ pair: { first, second } }: { readonly pair: EventPair }) {
  return (
    <RowTable
      caption={`${nameOf(first)} beside ${nameOf(second)}`}
      heads={[`${first.siteCode} ${first.lineCode ?? ""}`, nameOf(first), nameOf(second)]}
    >
      {FIELDS.map(({ name, of }) => {
        const differs = of(first) !== of(second);
        return (
          <tr key={name}>
            <th scope="row">{name}</th>
            <td className={differs ? "font-semibold" : ""}>{of(first)}</td>
            <td className={differs ? "font-semibold" : ""}>{of(second)}</td>
          </tr>
        );
      })}
    </RowTable>
  );
}
