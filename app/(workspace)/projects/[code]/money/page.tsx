import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { Breadcrumbs } from "@/app/_ui/Breadcrumbs";
import { PageHeader } from "@/app/_ui/PageHeader";
import { ProjectLinks } from "@/app/(workspace)/projects/[code]/_components/ProjectLinks";
import { Changes } from "@/app/(workspace)/projects/[code]/money/_components/Changes";
import { ClassTable } from "@/app/(workspace)/projects/[code]/money/_components/ClassTable";
import { CostList } from "@/app/(workspace)/projects/[code]/money/_components/CostList";
import { ImportCosts } from "@/app/(workspace)/projects/[code]/money/_components/ImportCosts";
import { MoneyHead } from "@/app/(workspace)/projects/[code]/money/_components/MoneyHead";
import { Rates } from "@/app/(workspace)/projects/[code]/money/_components/Rates";
import { SplitBudget } from "@/app/(workspace)/projects/[code]/money/_components/SplitBudget";
import { signedInActor } from "@/lib/access/actor";
import { mayAt } from "@/lib/access/policy";
import { readAsOf } from "@/lib/data/asOf";
import { readProject } from "@/lib/data/project";
import { readCostImports } from "@/lib/data/projectImport";
import { readRateTable } from "@/lib/data/projectRates";
import { projectFigures } from "@/lib/view/project";
import { inWords } from "@/lib/words/say";

interface MoneyPageProps {
  readonly params: Promise<{ readonly code: string }>;
  readonly searchParams: Promise<{ readonly asOf?: string }>;
}

export async function generateMetadata({ params }: MoneyPageProps): Promise<Metadata> {
  return { title: inWords(`Money of ${(await params).code}`) };
}

export default async function MoneyPage({ params, searchParams }: MoneyPageProps) {
  const actor = await signedInActor();
  const { code } = await params;
  const asOf = await readAsOf(actor, (await searchParams).asOf);
  const [project, rates, files] = await Promise.all([
    readProject(actor, code),
    readRateTable(actor),
    readCostImports(actor, code),
  ]);
  if (!project) notFound();
  const figures = projectFigures(project, asOf);
  const mayWrite = mayAt(actor.grants, "project:write", project.siteId);
  const mayApprove = mayAt(actor.grants, "plan:approve", project.siteId);
  return (
    <>
      <PageHeader
        title={`Money of ${project.code}`}
        lead={`${project.name}, ${project.siteName}. Kept in ${project.currency}; an estimate of the rest is what somebody stated, never worked out from a feeling.`}
        asOf={asOf}
        above={
          <Breadcrumbs
            crumbs={[
              { label: "Projects", href: "/projects" },
              { label: code, href: `/projects/${code}` },
            ]}
          />
        }
      />
      <ProjectLinks code={code} current="money" />
      <MoneyHead {...{ project, figures, rates, asOf }} />
      <ClassTable project={project} ledger={figures.ledger} mayWrite={mayWrite} />
      {mayWrite && project.items.length === 0 ? <SplitBudget project={project} /> : null}
      <Changes {...{ project, asOf, mayWrite, mayApprove }} />
      <CostList {...{ project, asOf, mayWrite, rates }} />
      {mayWrite || files.length > 0 ? <ImportCosts {...{ project, files, mayWrite }} /> : null}
      <Rates table={rates} currency={project.currency} asOf={asOf} />
    </>
  );
}
