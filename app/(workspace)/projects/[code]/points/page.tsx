import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { Breadcrumbs } from "@/app/_ui/Breadcrumbs";
import { PageHeader } from "@/app/_ui/PageHeader";
import { ProjectLinks } from "@/app/(workspace)/projects/[code]/_components/ProjectLinks";
import { OpenPoints } from "@/app/(workspace)/projects/[code]/points/_components/OpenPoints";
import { Risks } from "@/app/(workspace)/projects/[code]/points/_components/Risks";
import { signedInActor } from "@/lib/access/actor";
import { mayAt, mayInProject } from "@/lib/access/policy";
import { readAsOf } from "@/lib/data/asOf";
import { readProjectPoints } from "@/lib/data/projectPoints";
import { POINT_FILTERS, pointCounts } from "@/lib/view/projectPoints";
import { riskWithoutAmounts } from "@/lib/view/withoutAmounts";
import { inWords } from "@/lib/words/say";

interface PointsPageProps {
  readonly params: Promise<{ readonly code: string }>;
  readonly searchParams: Promise<{ readonly asOf?: string; readonly show?: string }>;
}

export async function generateMetadata({ params }: PointsPageProps): Promise<Metadata> {
  return { title: inWords(`Open points of ${(await params).code}`) };
}

export default async function PointsPage({ params, searchParams }: PointsPageProps) {
  const actor = await signedInActor({ amounts: "hidden", to: "contractors" });
  const [{ code }, asked] = await Promise.all([params, searchParams]);
  const [asOf, project] = await Promise.all([readAsOf(actor, asked.asOf), readProjectPoints(actor, code)]);
  if (!project) notFound();
  const amounts = mayInProject(actor.grants, "money:read", { projectId: project.id, siteId: project.siteId });
  const risks = amounts ? project.risks : project.risks.map(riskWithoutAmounts);
  const { open, late, blocking } = pointCounts(project.points, asOf);
  const mayWrite = mayAt(actor.grants, "project:write", project.siteId) && project.status !== "closed";
  const mayRaise =
    mayInProject(actor.grants, "event:write", { projectId: project.id, siteId: project.siteId }) &&
    project.status !== "closed";
  const filter = POINT_FILTERS.find((one) => one === asked.show) ?? "open";
  return (
    <>
      <PageHeader
        title={`Open points of ${code}`}
        lead={`${open} open, ${late} of them late, ${blocking} in the way of acceptance.`}
        asOf={asOf}
        above={
          <Breadcrumbs
            crumbs={[
              { label: "Projects", href: "/projects" },
              { label: code, href: `/projects/${encodeURIComponent(code)}` },
            ]}
          />
        }
      />
      <ProjectLinks code={code} current="points" outside={!mayAt(actor.grants, "read", project.siteId)} />
      <OpenPoints
        {...{ code, asOf, mayWrite, mayRaise, filter }}
        projectId={project.id}
        points={project.points}
      />
      <Risks
        {...{ mayWrite: mayWrite && amounts }}
        projectId={project.id}
        currency={project.currency}
        risks={risks}
      />
    </>
  );
}
