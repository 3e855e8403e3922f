import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { Breadcrumbs } from "@/app/_ui/Breadcrumbs";
import { LinkButton } from "@/app/_ui/LinkButton";
import { PageHeader } from "@/app/_ui/PageHeader";
import { Curve } from "@/app/(workspace)/projects/[code]/_components/Curve";
import { EarnedValue } from "@/app/(workspace)/projects/[code]/_components/EarnedValue";
import { InviteContractor } from "@/app/(workspace)/projects/[code]/_components/InviteContractor";
import { Milestones } from "@/app/(workspace)/projects/[code]/_components/Milestones";
import { ProjectCautions } from "@/app/(workspace)/projects/[code]/_components/ProjectCautions";
import { ProjectHead } from "@/app/(workspace)/projects/[code]/_components/ProjectHead";
import { ProjectLinks } from "@/app/(workspace)/projects/[code]/_components/ProjectLinks";
import { ProjectSettings } from "@/app/(workspace)/projects/[code]/_components/ProjectSettings";
import { signedInActor } from "@/lib/access/actor";
import { mayAt, mayInProject } from "@/lib/access/policy";
import { readAsOf } from "@/lib/data/asOf";
import { readProject } from "@/lib/data/project";
import { projectFigures, projectStatusWords } from "@/lib/view/project";
import { withoutAmounts } from "@/lib/view/withoutAmounts";
import { inWords } from "@/lib/words/say";

interface ProjectPageProps {
  readonly params: Promise<{ readonly code: string }>;
  readonly searchParams: Promise<{ readonly asOf?: string }>;
}

export async function generateMetadata({ params }: ProjectPageProps): Promise<Metadata> {
  return { title: inWords(`Project ${(await params).code}`) };
}

export default async function ProjectPage({ params, searchParams }: ProjectPageProps) {
  const actor = await signedInActor({ amounts: "hidden", to: "contractors" });
  const { code } = await params;
  const asOf = await readAsOf(actor, (await searchParams).asOf);
  const stored = await readProject(actor, code);
  if (!stored) notFound();
  const { id: projectId, siteId } = stored;
  const amounts = mayInProject(actor.grants, "money:read", { projectId, siteId });
  const project = amounts ? stored : withoutAmounts(stored);
  const figures = projectFigures(project, asOf);
  const outside = !mayAt(actor.grants, "read", siteId);
  const mayWrite = mayAt(actor.grants, "project:write", project.siteId);
  return (
    <>
      <PageHeader
        title={`${project.code} ${project.name}`}
        lead={`${projectStatusWords(project.status)} on line ${project.lineCode} ${project.lineName}, ${project.siteName}.`}
        asOf={asOf}
        above={<Breadcrumbs crumbs={[{ label: "Projects", href: "/projects" }]} />}
        actions={
          <>
            <LinkButton href={`/lines/${encodeURIComponent(project.lineCode)}/scope`}>
              What a retrofit takes
            </LinkButton>
            {outside ? null : <LinkButton href={`/audit?of=project&id=${project.id}`}>History</LinkButton>}
            {mayWrite ? (
              <InviteContractor projectId={projectId} endsOn={project.endsOn} mayShowAmounts={amounts} />
            ) : null}
          </>
        }
      />
      <ProjectLinks code={code} current="overview" outside={outside} />
      {amounts ? (
        <>
          <ProjectHead project={project} figures={figures} />
          <Curve project={project} figures={figures} asOf={asOf} />
          <EarnedValue project={project} figures={figures} asOf={asOf} />
        </>
      ) : null}
      <Milestones project={project} overdue={figures.overdue} asOf={asOf} mayWrite={mayWrite} />
      {mayWrite && amounts ? <ProjectSettings project={project} /> : null}
      <ProjectCautions />
    </>
  );
}
