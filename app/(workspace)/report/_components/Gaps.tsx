import { SheetTable } from "@/app/(workspace)/report/_components/SheetTable";
import { percent } from "@/lib/view/chance";
import { plainNumber } from "@/lib/view/number";
import type { ReportInput } from "@/lib/view/report";
import { reportGapRows } from "@/lib/view/reportGapRows";

/** What nobody has recorded and the figures therefore assume. */
export function Gaps({ report }: { readonly report: ReportInput }) {
  return (
    <SheetTable
      title="Data gaps"
      heads={[
        { text: "Gap" },
        { text: "Missing", end: true },
        { text: "Of", end: true },
        { text: "Share", end: true },
      ]}
    >
      {reportGapRows(report).map(({ what, missing, of }) => (
        <tr key={what}>
          <th scope="row">{what}</th>
          <td data-align="end">{plainNumber(missing)}</td>
          <td data-align="end">{plainNumber(of)}</td>
          <td data-align="end">{of === 0 ? "–" : percent(missing / of)}</td>
        </tr>
      ))}
    </SheetTable>
  );
}
