import { EmptyState } from "@/app/_ui/EmptyState";
import { LinkButton } from "@/app/_ui/LinkButton";
import { PageHeader } from "@/app/_ui/PageHeader";
import { titled } from "@/app/_ui/titled";
import { Finance } from "@/app/(workspace)/projects/_components/Finance";
import { ProjectTable } from "@/app/(workspace)/projects/_components/ProjectTable";
import { signedInActor } from "@/lib/access/actor";
import { seesAmounts } from "@/lib/access/policy";
import { readAsOf } from "@/lib/data/asOf";
import { readPaidByQuarter, readProjectList } from "@/lib/data/projectList";
import { listedWithoutAmounts } from "@/lib/view/withoutAmounts";

export const generateMetadata = titled("Projects");

interface ProjectsPageProps {
  readonly searchParams: Promise<{ readonly asOf?: string }>;
}

export default async function ProjectsPage({ searchParams }: ProjectsPageProps) {
  const actor = await signedInActor({ amounts: "hidden", to: "contractors" });
  const asOf = await readAsOf(actor, (await searchParams).asOf);
  const amounts = seesAmounts(actor.grants);
  const [listed, paid] = await Promise.all([
    readProjectList(actor, asOf),
    amounts ? readPaidByQuarter(actor, asOf) : [],
  ]);
  const projects = amounts ? listed : listed.map(listedWithoutAmounts);
  return (
    <>
      <PageHeader
        title="Projects"
        lead={
          amounts
            ? "What each retrofit has earned and cost against its budget and its calendar, in the money of its site."
            : "What each retrofit has done against its calendar. Your roles leave amounts of money out."
        }
        asOf={asOf}
        actions={<LinkButton href="/projects/calendar">Calendar</LinkButton>}
      />
      {projects.length === 0 ? (
        <EmptyState title="No projects at your sites" actions={<LinkButton href="/plans">Plans</LinkButton>}>
          A project starts from a funded line of a plan.
        </EmptyState>
      ) : (
        <>
          <ProjectTable rows={projects} amounts={amounts} />
          {amounts ? <Finance projects={projects} paid={paid} asOf={asOf} /> : null}
        </>
      )}
    </>
  );
}
