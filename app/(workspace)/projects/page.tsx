import type { Metadata } from "next";
import { EmptyState } from "@/app/_ui/EmptyState";
import { LinkButton } from "@/app/_ui/LinkButton";
import { PageHeader } from "@/app/_ui/PageHeader";
import { Finance } from "@/app/(workspace)/projects/_components/Finance";
import { ProjectTable } from "@/app/(workspace)/projects/_components/ProjectTable";
import { signedInActor } from "@/lib/access/actor";
import { readAsOf } from "@/lib/data/asOf";
import { readPaidByQuarter, readProjectList } from "@/lib/data/projectList";

export const metadata: Metadata = { title: "Projects" };

interface ProjectsPageProps {
  readonly searchParams: Promise<{ readonly asOf?: string }>;
}

export default async function ProjectsPage({ searchParams }: ProjectsPageProps) {
  const actor = await signedInActor();
  const asOf = await readAsOf(actor, (await searchParams).asOf);
  const [projects, paid] = await Promise.all([readProjectList(actor, asOf), readPaidByQuarter(actor, asOf)]);
  return (
    <>
      <PageHeader
        title="Projects"
        lead="What each retrofit has earned and cost against its budget and its calendar, in the money of its site."
        asOf={asOf}
        actions={<LinkButton href="/projects/calendar">Calendar</LinkButton>}
      />
      {projects.length === 0 ? (
        <EmptyState title="No projects at your sites" actions={<LinkButton href="/plans">Plans</LinkButton>}>
          A project starts from a funded line of a plan.
        </EmptyState>
      ) : (
        <>
          <ProjectTable rows={projects} />
          <Finance projects={projects} paid={paid} asOf={asOf} />
        </>
      )}
    </>
  );
}
