import { RowTable } from "@/app/_ui/RowTable";
import { NOTICE_DATE_FIELDS, NOTICE_DATE_NAMES } from "@/lib/view/noticeDates";
import { type NoticePreview, overwrittenTogether } from "@/lib/view/noticePreview";
import { day } from "@/lib/view/time";

const HEADS = ["Day", "On record now", "Then", "Source on record", "Parts"];

/** Which days on record give way, and which go on standing beside the notice's own. */
export function PreviewDates({ parts }: Pick<NoticePreview, "parts">) {
  const rows = overwrittenTogether(parts);
  const sources = [...new Set(parts.map(({ source }) => source))];
  const family = parts.some(({ byFamily }) => byFamily);
  return (
    <>
      {rows.length === 0 ? (
        <p>No day on record gives way; {newDays(parts)}</p>
      ) : (
        <RowTable caption="Days on record that give way" heads={HEADS}>
          {rows.map(({ numbers, field, before, after, source }) => (
            <tr key={`${numbers.join()} ${field}`}>
              <th scope="row">{NOTICE_DATE_NAMES[field]}</th>
              <td>{day(before)}</td>
              <td className="font-semibold">{day(after)}</td>
              <td>{source}</td>
              <td>{numbers.join(", ")}</td>
            </tr>
          ))}
        </RowTable>
      )}
      <p className="mt-2 text-ink-2 text-sm">
        {`Source of the new statement: ${sources.join(" | ")}. `}
        {family ? "Where all parts of a family are meant, it is written once for the family. " : ""}
        The former statement stays on record.
      </p>
    </>
  );
}

function newDays(parts: NoticePreview["parts"]): string {
  const fresh = NOTICE_DATE_FIELDS.filter((field) =>
    parts.some(({ before, after }) => after[field] !== null && (before?.[field] ?? null) === null),
  );
  if (fresh.length === 0) return "the notice says again what is known.";
  return `new are: ${fresh.map((field) => NOTICE_DATE_NAMES[field].toLowerCase()).join(", ")}.`;
}
