import { AsOfLink } from "@/app/_ui/AsOfLink";
import { EvidenceMark } from "@/app/_ui/EvidenceMark";
import { KeyFigure } from "@/app/_ui/KeyFigure";
import { KeyFigures } from "@/app/_ui/KeyFigures";
import { Notice } from "@/app/_ui/Notice";
import { percent } from "@/lib/view/chance";
import { evidenceMark } from "@/lib/view/evidence";
import { exactMoney } from "@/lib/view/format";
import { NOT_KNOWN } from "@/lib/view/number";
import type { ProjectFigures, ProjectFile } from "@/lib/view/project";
import { index, localMoney, localRange } from "@/lib/view/projectMoney";
import { projectWarnings } from "@/lib/view/projectWarnings";
import { day } from "@/lib/view/time";

interface ProjectHeadProps {
  readonly project: ProjectFile;
  readonly figures: ProjectFigures;
}

/** The project's money and progress, why it stands so, and what somebody must act on. */
export function ProjectHead({ project, figures }: ProjectHeadProps) {
  const { currency, cause, planId, lineCode } = project;
  const warnings = projectWarnings(project, figures);
  const documented = <EvidenceMark {...evidenceMark("documented")} />;
  return (
    <>
      <KeyFigures>
        <KeyFigure
          label="Budget"
          value={localMoney(Number(figures.budget), currency)}
          span={budgetSpan(project, figures)}
          evidence={documented}
        />
        <KeyFigure
          label="Paid"
          value={localMoney(Number(figures.actual), currency)}
          span={`and ${exactMoney(figures.committed, currency)} ordered`}
          evidence={documented}
        />
        <KeyFigure
          label="Earned of the budget"
          value={percent(figures.earned)}
          span={`${percent(figures.planned)} planned by the day`}
        />
        <KeyFigure
          label="Cost index"
          value={index(figures.control?.cpi)}
          span={`schedule index ${index(figures.control?.spi)}`}
        />
        <KeyFigure
          label="Cost at the end, trend"
          value={localMoney(figures.control?.eac.trend ?? null, currency)}
          span={localRange(figures.eacSpan, currency)}
          evidence={<EvidenceMark {...evidenceMark("inferred")} />}
        />
        <KeyFigure
          label="Lead's forecast"
          value={project.forecast === null ? NOT_KNOWN : localMoney(Number(project.forecast), currency)}
          span={`end planned ${day(project.endsOn)}, at the pace so far ${day(figures.forecastEndOn)}`}
        />
      </KeyFigures>
      <p className="measure">
        {cause ? `Cause: ${cause}. ` : ""}
        Line <AsOfLink href={`/lines/${lineCode}`}>{lineCode}</AsOfLink>
        {planId ? (
          <>
            , started from a line of a <AsOfLink href={`/plans/${planId}`}>plan</AsOfLink>
          </>
        ) : null}
        .
      </p>
      {warnings.length > 0 ? (
        <Notice kind="caution" title="Look at this">
          <ul className="list-disc pl-5">
            {warnings.map((text) => (
              <li key={text}>{text}</li>
            ))}
          </ul>
        </Notice>
      ) : null}
    </>
  );
}

/** What changes did to the budget, and what contingency has left. */
function budgetSpan({ currency }: ProjectFile, { ledger }: ProjectFigures): string {
  const { total, contingencyLeft } = ledger;
  const grown = Number(total.changed) === 0 ? "" : `${exactMoney(total.changed, currency)} of it by changes`;
  const left = contingencyLeft === null ? "" : `${exactMoney(contingencyLeft, currency)} of contingency left`;
  return [grown, left].filter((text) => text !== "").join("; ");
}
