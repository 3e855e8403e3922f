import { AsOfLink } from "@/app/_ui/AsOfLink";
import type { LineDossier } from "@/lib/view/lineDossier";

const PINS = { none: "", in: ", pinned in", out: ", kept out" } as const;

const words = (status: string) => status.replaceAll("_", " ");

/** Projects on the line and plans that name it. */
export function LineLinks({ projects, plans }: Pick<LineDossier, "projects" | "plans">) {
  return (
    <div className="grid gap-x-10 gap-y-4 sm:grid-cols-2">
      <div>
        <h3 className="label">Projects</h3>
        {projects.length === 0 ? <p>No project runs on this line.</p> : null}
        <ul>
          {projects.map((project) => (
            <li key={project.code} className="py-1">
              <AsOfLink href={`/projects/${project.code}`}>
                {project.code} {project.name}
              </AsOfLink>{" "}
              <span className="text-ink-2">{words(project.status)}</span>
            </li>
          ))}
        </ul>
      </div>
      <div>
        <h3 className="label">Plans</h3>
        {plans.length === 0 ? <p>No plan names this line.</p> : null}
        <ul>
          {plans.map((plan) => (
            <li key={plan.id} className="py-1">
              <AsOfLink href={`/plans/${plan.id}`}>
                {plan.name}, {plan.year}
              </AsOfLink>{" "}
              <span className="text-ink-2">
                {`${words(plan.status)}; rank ${plan.rank}, ${plan.funded ? "funded" : "below the funding line"}${PINS[plan.pin]}`}
              </span>
            </li>
          ))}
        </ul>
      </div>
    </div>
  );
}
