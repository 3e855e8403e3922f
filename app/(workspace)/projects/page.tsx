import type { Metadata } from "next";
import { EmptyState } from "@/app/_ui/EmptyState";
import { LinkButton } from "@/app/_ui/LinkButton";
import { PageHeader } from "@/app/_ui/PageHeader";
import { ProjectTable } from "@/app/(workspace)/projects/_components/ProjectTable";
import { signedInActor } from "@/lib/access/actor";
import { readAsOf } from "@/lib/data/asOf";
import { readProjects } from "@/lib/data/project";
import { projectFigures } from "@/lib/view/project";

export const metadata: Metadata = { title: "Projects" };

interface ProjectsPageProps {
  readonly searchParams: Promise<{ readonly asOf?: string }>;
}

export default async function ProjectsPage({ searchParams }: ProjectsPageProps) {
  const actor = await signedInActor();
  const asOf = await readAsOf(actor, (await searchParams).asOf);
  const projects = await readProjects(actor);
  return (
    <>
      <PageHeader
        title="Projects"
        lead="What each retrofit has earned and cost against its budget and its calendar, in the money of its site."
        asOf={asOf}
      />
      {projects.length === 0 ? (
        <EmptyState title="No projects at your sites" actions={<LinkButton href="/plans">Plans</LinkButton>}>
          A project starts from a funded line of a plan.
        </EmptyState>
      ) : (
        <ProjectTable
          rows={projects.map((project) => ({ project, figures: projectFigures(project, asOf) }))}
        />
      )}
    </>
  );
}
