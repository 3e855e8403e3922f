import { AsOfLink } from "@/app/_ui/AsOfLink";
import { RowTable } from "@/app/_ui/RowTable";
import { IssueFiles } from "@/app/(workspace)/report/archive/_components/IssueFiles";
import { type IssueMark, issueScope, periodWords } from "@/lib/view/reportArchive";
import { day, moment } from "@/lib/view/time";

interface IssueTableProps {
  readonly issues: readonly IssueMark[];
  /** Zone whose clock the reader is told instants by. */
  readonly zone: string;
}

/** The reports that were given out, the latest period first. */
export function IssueTable({ issues, zone }: IssueTableProps) {
  return (
    <RowTable
      caption="Reports given out"
      heads={[
        "Period",
        "Of",
        "Figures of",
        { text: "Data version", end: true },
        `Given out (${zone})`,
        "By",
        "Files",
      ]}
    >
      {issues.map((issue) => (
        <tr key={issue.id}>
          <th scope="row">
            <AsOfLink href={`/report/archive/${issue.id}`}>
              {issue.kind === "monthly" ? "Month" : ""} {periodWords(issue)}
            </AsOfLink>
          </th>
          <td>{issueScope(issue)}</td>
          <td>{day(issue.asOf)}</td>
          <td data-align="end">{issue.dataVersion}</td>
          <td>{moment(issue.issuedAt, zone)}</td>
          <td>{issue.issuedBy}</td>
          <td>
            <IssueFiles issue={issue} />
          </td>
        </tr>
      ))}
    </RowTable>
  );
}
