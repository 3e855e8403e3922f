import { AsOfLink } from "@/app/_ui/AsOfLink";
import { RowTable } from "@/app/_ui/RowTable";
import { percent } from "@/lib/view/chance";
import { exactMoney } from "@/lib/view/format";
import { NOT_KNOWN } from "@/lib/view/number";
import { type ProjectFigures, type ProjectFile, projectStatusWords } from "@/lib/view/project";
import { index, localMoney, localRange } from "@/lib/view/projectMoney";

interface ProjectTableProps {
  readonly rows: readonly { readonly project: ProjectFile; readonly figures: ProjectFigures }[];
}

const HEADS = [
  "Project",
  "State",
  { text: "Budget", end: true },
  { text: "Ordered", end: true },
  { text: "Paid", end: true },
  { text: "Planned / earned", end: true },
  { text: "Cost index", end: true },
  { text: "Schedule index", end: true },
  { text: "Cost at the end", end: true },
  { text: "Lead's forecast", end: true },
];

/** The projects with their budgets, ledgers, progress and forecasts. */
export function ProjectTable({ rows }: ProjectTableProps) {
  return (
    <RowTable caption="Projects" heads={HEADS}>
      {rows.map(({ project, figures }) => (
        <tr key={project.id}>
          <th scope="row">
            <AsOfLink href={`/projects/${project.code}`} className="row-link">
              {project.code}
            </AsOfLink>{" "}
            {project.name}
            {project.cause ? <span className="block text-ink-2 text-sm">{project.cause}</span> : null}
          </th>
          <td>{projectStatusWords(project.status)}</td>
          <td data-align="end">{exactMoney(project.budget, project.currency)}</td>
          <td data-align="end">{exactMoney(figures.committed, project.currency)}</td>
          <td data-align="end">{exactMoney(figures.actual, project.currency)}</td>
          <td data-align="end">
            {percent(figures.planned)} / {percent(figures.earned)}
          </td>
          <td data-align="end">{index(figures.control?.cpi)}</td>
          <td data-align="end">{index(figures.control?.spi)}</td>
          <td data-align="end">
            {localMoney(figures.control?.eac.trend ?? null, project.currency)}
            <span className="block text-ink-2 text-sm">{localRange(figures.eacSpan, project.currency)}</span>
          </td>
          <td data-align="end">
            {project.forecast === null ? NOT_KNOWN : exactMoney(project.forecast, project.currency)}
          </td>
        </tr>
      ))}
    </RowTable>
  );
}
