import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { Breadcrumbs } from "@/app/_ui/Breadcrumbs";
import { LinkButton } from "@/app/_ui/LinkButton";
import { PageHeader } from "@/app/_ui/PageHeader";
import { Curve } from "@/app/(workspace)/projects/[code]/_components/Curve";
import { EarnedValue } from "@/app/(workspace)/projects/[code]/_components/EarnedValue";
import { Milestones } from "@/app/(workspace)/projects/[code]/_components/Milestones";
import { ProjectCautions } from "@/app/(workspace)/projects/[code]/_components/ProjectCautions";
import { ProjectHead } from "@/app/(workspace)/projects/[code]/_components/ProjectHead";
import { ProjectLinks } from "@/app/(workspace)/projects/[code]/_components/ProjectLinks";
import { ProjectSettings } from "@/app/(workspace)/projects/[code]/_components/ProjectSettings";
import { signedInActor } from "@/lib/access/actor";
import { mayAt } from "@/lib/access/policy";
import { readAsOf } from "@/lib/data/asOf";
import { readProject } from "@/lib/data/project";
import { projectFigures, projectStatusWords } from "@/lib/view/project";

interface ProjectPageProps {
  readonly params: Promise<{ readonly code: string }>;
  readonly searchParams: Promise<{ readonly asOf?: string }>;
}

export async function generateMetadata({ params }: ProjectPageProps): Promise<Metadata> {
  return { title: `Project ${(await params).code}` };
}

export default async function ProjectPage({ params, searchParams }: ProjectPageProps) {
  const actor = await signedInActor();
  const { code } = await params;
  const asOf = await readAsOf(actor, (await searchParams).asOf);
  const project = await readProject(actor, code);
  if (!project) notFound();
  const figures = projectFigures(project, asOf);
  const mayWrite = mayAt(actor.grants, "project:write", project.siteId);
  return (
    <>
      <PageHeader
        title={`${project.code} ${project.name}`}
        lead={`${projectStatusWords(project.status)} on line ${project.lineCode} ${project.lineName}, ${project.siteName}.`}
        asOf={asOf}
        above={<Breadcrumbs crumbs={[{ label: "Projects", href: "/projects" }]} />}
        actions={
          <LinkButton href={`/lines/${encodeURIComponent(project.lineCode)}/scope`}>
            What a retrofit takes
          </LinkButton>
        }
      />
      <ProjectLinks code={code} current="overview" />
      <ProjectHead project={project} figures={figures} />
      <Curve project={project} figures={figures} asOf={asOf} />
      <EarnedValue project={project} figures={figures} asOf={asOf} />
      <Milestones project={project} overdue={figures.overdue} asOf={asOf} mayWrite={mayWrite} />
      {mayWrite ? <ProjectSettings project={project} /> : null}
      <ProjectCautions />
    </>
  );
}
