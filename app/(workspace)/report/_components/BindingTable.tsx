import { SheetTable } from "@/app/(workspace)/report/_components/SheetTable";
import { count } from "@/lib/view/number";
import { obligationWords } from "@/lib/view/obligation";
import type { ReportInput } from "@/lib/view/report";
import { day } from "@/lib/view/time";

const SHOWN = 4;

/** Safety and legal dates of the next 24 months, beside the money and never weighed against it. */
export function BindingTable({ report: { obligations, asOf } }: { readonly report: ReportInput }) {
  if (obligations.length === 0) return null;
  const more = obligations.length - SHOWN;
  const rest = more > 0 ? ` And ${count(more, "later date")}, on the page Dates ahead.` : "";
  return (
    <SheetTable
      title="Safety and legal dates within 24 months"
      heads={[
        { text: "Due on" },
        { text: "Of" },
        { text: "Kind" },
        { text: "What must be done" },
        { text: "Owner" },
      ]}
      note={`They bind whatever a line loses and stand in no figure here; a named competent person decides.${rest}`}
    >
      {obligations.slice(0, SHOWN).map(({ id, kind, title, dueOn, line, siteCode, owner }) => (
        <tr key={id}>
          <td>
            {day(dueOn)}
            {dueOn < asOf ? " – overdue" : ""}
          </td>
          <th scope="row">{line?.code ?? `${siteCode}, whole site`}</th>
          <td>{obligationWords(kind).name}</td>
          <td>{title}</td>
          <td>{owner ?? "nobody"}</td>
        </tr>
      ))}
    </SheetTable>
  );
}
