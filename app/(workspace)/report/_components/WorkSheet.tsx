import { Gaps } from "@/app/(workspace)/report/_components/Gaps";
import { Sheet } from "@/app/(workspace)/report/_components/Sheet";
import { SheetTable } from "@/app/(workspace)/report/_components/SheetTable";
import { assumptionNotes } from "@/lib/risk/assumptions";
import { percent } from "@/lib/view/chance";
import { money } from "@/lib/view/format";
import { count, plainNumber, quantity } from "@/lib/view/number";
import { projectFigures, projectStatusWords } from "@/lib/view/project";
import { index, localMoney, localRange } from "@/lib/view/projectMoney";
import type { ReportInput } from "@/lib/view/report";
import { decisionsAsked } from "@/lib/view/reportDecisions";
import { type WorstPool, worstPools } from "@/lib/view/reportPools";
import { stageView } from "@/lib/view/stage";

const POOLS_SHOWN = 8;
const PROJECTS_SHOWN = 6;
const DECISIONS_SHOWN = 8;

/** Page 2: spares, projects, what nobody has recorded, and what the reader is asked to decide. */
export function WorkSheet({ report }: { readonly report: ReportInput }) {
  const decisions = decisionsAsked(report);
  return (
    <Sheet report={report} page={2} title="Spares, projects, decisions">
      <Pools pools={worstPools(report, POOLS_SHOWN)} />
      <Projects report={report} />
      <div className="report-columns">
        <Gaps report={report} />
        <div>
          <h2 className="mb-1 font-semibold">Decisions asked for</h2>
          <ol className="list-decimal pl-5 text-sm">
            {decisions.slice(0, DECISIONS_SHOWN).map((text) => (
              <li key={text}>{text}</li>
            ))}
          </ol>
          {decisions.length === 0 ? <p className="text-sm">None this month.</p> : null}
          {decisions.length > DECISIONS_SHOWN ? (
            <p className="report-note">
              and {count(decisions.length - DECISIONS_SHOWN, "further decision")}.
            </p>
          ) : null}
        </div>
      </div>
      <Footing />
    </Sheet>
  );
}

function Pools({ pools }: { readonly pools: readonly WorstPool[] }) {
  return (
    <SheetTable
      title="Spares: the pools whose empty shelf costs most"
      heads={[
        { text: "Part" },
        { text: "Stage" },
        { text: "Units here", end: true },
        { text: "Usable / book here", end: true },
        { text: "Usable elsewhere", end: true },
        { text: "No spare, next year", end: true },
        { text: "Shortage a year", end: true },
        { text: "Held share" },
      ]}
      note="No spare: chance that a failure finds no usable spare anywhere in the group, mean of the next twelve months. Held share: a site's share of the usable spares over its share of the units; 1 is even, above 1.5 it hoards."
    >
      {pools.map(({ part, units, shortage, held, ...stock }) => (
        <tr key={part.id}>
          <th scope="row">{part.number}</th>
          <td>
            {stageView(part.pool.stage).letter} {stageView(part.pool.stage).name}
          </td>
          <td data-align="end">{plainNumber(units)}</td>
          <td data-align="end">
            {quantity(stock.usableHere)} / {quantity(stock.bookHere)}
          </td>
          <td data-align="end">{quantity(stock.usableElsewhere)}</td>
          <td data-align="end">{percent(part.pool.noSpare.mean)}</td>
          <td data-align="end">{money(shortage)}</td>
          <td>{held === null ? "none held" : `${held.siteCode} ${plainNumber(held.index, 1)}`}</td>
        </tr>
      ))}
    </SheetTable>
  );
}

function Projects({ report }: { readonly report: ReportInput }) {
  const open = report.projects.filter(({ status }) => status !== "closed");
  const more = open.length - PROJECTS_SHOWN;
  return (
    <SheetTable
      title="Projects"
      heads={[
        { text: "Project" },
        { text: "State" },
        { text: "Budget", end: true },
        { text: "Planned / earned", end: true },
        { text: "Paid", end: true },
        { text: "Cost / schedule index", end: true },
        { text: "Cost at the end", end: true },
      ]}
      note={
        more > 0
          ? `and ${count(more, "further project")}.`
          : "Cost at the end: trend, and the range of three forecasts."
      }
    >
      {open.slice(0, PROJECTS_SHOWN).map((project) => {
        const figures = projectFigures(project, report.asOf);
        return (
          <tr key={project.id}>
            <th scope="row">
              {project.code}
              {project.cause ? <span className="line-clamp-2 font-normal">{project.cause}</span> : null}
            </th>
            <td>{projectStatusWords(project.status)}</td>
            <td data-align="end">{localMoney(Number(project.budget), project.currency)}</td>
            <td data-align="end">
              {percent(figures.planned)} / {percent(figures.earned)}
            </td>
            <td data-align="end">{localMoney(Number(figures.actual), project.currency)}</td>
            <td data-align="end">
              {index(figures.control?.cpi)} / {index(figures.control?.spi)}
            </td>
            <td data-align="end">
              {localMoney(figures.control?.eac.trend ?? null, project.currency)}
              <span className="block">{localRange(figures.eacSpan, project.currency)}</span>
            </td>
          </tr>
        );
      })}
      {open.length === 0 ? (
        <tr>
          <td colSpan={7}>No project is open.</td>
        </tr>
      ) : null}
    </SheetTable>
  );
}

const ASSUMED = Object.values(assumptionNotes)
  .map(({ title }) => title.charAt(0).toLowerCase() + title.slice(1))
  .join("; ");

function Footing() {
  return (
    <div className="report-note">
      <p>
        <strong>Assumed</strong>, not measured; the page Assumptions gives each value and its basis: {ASSUMED}
        .
      </p>
      <p className="mt-1">
        <strong>Caution.</strong> These are estimates from sparse records, given with ranges and without
        guarantee; a 3 % chance happens. They never justify running an unsafe machine, and safety and legal
        duties are not traded against money. Losses of lines that share spares do not add up to what a plan
        removes.
      </p>
    </div>
  );
}
