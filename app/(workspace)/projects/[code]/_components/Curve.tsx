import { LineSpanChart } from "@/app/_ui/chart/LineSpanChart";
import { Section } from "@/app/_ui/Section";
import type { ProjectFigures, ProjectFile } from "@/lib/view/project";
import { curveChart, projectCurve } from "@/lib/view/projectCurve";

interface CurveProps {
  readonly project: ProjectFile;
  readonly figures: ProjectFigures;
  readonly asOf: string;
}

/** Planned, earned and paid over time, and where the forecasts go. */
export function Curve({ project, figures, asOf }: CurveProps) {
  const chart = curveChart(projectCurve(project, figures, asOf), project.currency, asOf);
  return (
    <Section
      title="Over time"
      lead="Sums at the end of each month; in the month of the as-of day, on that day. The forecasts go straight from what is paid to the lowest and highest cost at the end, at the end foreseen: an assumption."
    >
      {chart === null ? (
        <p className="text-ink-2">
          There is no curve without a start, a planned end and milestones. Date them in the schedule and
          below.
        </p>
      ) : (
        <LineSpanChart chart={chart} height={300} />
      )}
    </Section>
  );
}
