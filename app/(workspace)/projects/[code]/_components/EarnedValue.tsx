import { Derivation } from "@/app/_ui/Derivation";
import { Section } from "@/app/_ui/Section";
import type { ProjectFigures, ProjectFile } from "@/lib/view/project";
import { projectSteps } from "@/lib/view/projectSteps";

interface EarnedValueProps {
  readonly project: ProjectFile;
  readonly figures: ProjectFigures;
  readonly asOf: string;
}

/** The arithmetic behind the indices and forecasts. */
export function EarnedValue({ project, figures, asOf }: EarnedValueProps) {
  const steps = projectSteps(project, figures, asOf);
  return (
    <Section
      title="Earned against planned"
      lead="A milestone earns its weight of the budget when it is done, and nothing before; it is planned when its due day has passed."
    >
      {steps.length === 0 ? (
        <p className="text-ink-2">Without milestones nothing is earned and nothing can be forecast.</p>
      ) : (
        <Derivation title={`Indices and forecasts, in ${project.currency}`} steps={steps} open>
          Formulas of earned value management, as in GAO-09-3SP (from memory). The indices use what is paid;
          the same against paid and ordered together stands below them. An index that would divide by zero is
          not defined. Rest as planned takes the trouble so far as over; the trend goes on at the cost so far;
          the third also lets the delay cost. The three are the range, not a statistical span.
        </Derivation>
      )}
    </Section>
  );
}
