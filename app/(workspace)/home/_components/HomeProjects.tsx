import { AsOfLink } from "@/app/_ui/AsOfLink";
import type { HomeProject } from "@/lib/view/home";
import { count } from "@/lib/view/number";

const MOST = 20;

/** The open projects, one line each; an index below 1 is worse than planned. */
export function HomeProjects({ projects }: { readonly projects: readonly HomeProject[] }) {
  if (projects.length === 0) return <p>No project is open.</p>;
  const more = projects.length - MOST;
  return (
    <ul className="grid gap-2">
      {projects.slice(0, MOST).map(({ code, name, state, costIndex, scheduleIndex, end }) => (
        <li
          key={code}
          className="grid gap-x-6 border-rule border-b pb-2 md:grid-cols-[minmax(0,1fr)_9rem_15rem_11rem]"
        >
          <AsOfLink href={`/projects/${code}`}>
            <strong>{code}</strong> {name}
          </AsOfLink>
          <span>{state}</span>
          <span>
            cost index {costIndex}, schedule index {scheduleIndex}
          </span>
          <span>end {end}</span>
        </li>
      ))}
      {more > 0 ? (
        <li>
          <AsOfLink href="/projects">and {count(more, "more project")}</AsOfLink>
        </li>
      ) : null}
    </ul>
  );
}
