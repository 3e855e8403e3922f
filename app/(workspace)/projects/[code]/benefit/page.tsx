import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { Breadcrumbs } from "@/app/_ui/Breadcrumbs";
import { EmptyState } from "@/app/_ui/EmptyState";
import { LinkButton } from "@/app/_ui/LinkButton";
import { PageHeader } from "@/app/_ui/PageHeader";
import { ProjectLinks } from "@/app/(workspace)/projects/[code]/_components/ProjectLinks";
import { CheckForm } from "@/app/(workspace)/projects/[code]/benefit/_components/CheckForm";
import { Comparison } from "@/app/(workspace)/projects/[code]/benefit/_components/Comparison";
import { signedInActor } from "@/lib/access/actor";
import { mayAt } from "@/lib/access/policy";
import { readAsOf } from "@/lib/data/asOf";
import { readBenefit } from "@/lib/data/benefit";
import { benefitState } from "@/lib/projects/benefit";
import { benefitLead } from "@/lib/view/benefit";
import { day } from "@/lib/view/time";
import { inWords } from "@/lib/words/say";

interface BenefitPageProps {
  readonly params: Promise<{ readonly code: string }>;
  readonly searchParams: Promise<{ readonly asOf?: string }>;
}

export async function generateMetadata({ params }: BenefitPageProps): Promise<Metadata> {
  return { title: inWords(`Benefit of ${(await params).code}`) };
}

export default async function BenefitPage({ params, searchParams }: BenefitPageProps) {
  const actor = await signedInActor();
  const { code } = await params;
  const asOf = await readAsOf(actor, (await searchParams).asOf);
  const project = await readBenefit(actor, { code, asOf });
  if (!project) notFound();
  const { closing, figures } = project;
  const state = benefitState(closing, asOf);
  const home = `/projects/${encodeURIComponent(code)}`;
  return (
    <>
      <PageHeader
        title={`Benefit of ${code}`}
        lead={`${benefitLead(state)}${closing && state !== "checked" ? ` The check is due on ${day(closing.checkOn)}.` : ""}`}
        asOf={asOf}
        above={
          <Breadcrumbs
            crumbs={[
              { label: "Projects", href: "/projects" },
              { label: code, href: home },
            ]}
          />
        }
      />
      <ProjectLinks code={code} current="benefit" />
      {figures === null ? (
        <EmptyState
          title="Nothing to compare yet"
          actions={<LinkButton href={`${home}/close`}>What closing still needs</LinkButton>}
        >
          Closing the project sets this check for twelve months later: events, hours, money of stops and the
          rate of removals, before and after, against what was asked for.
        </EmptyState>
      ) : (
        <Comparison figures={figures} />
      )}
      {closing && (state === "due" || state === "checked") ? (
        <CheckForm
          {...{ projectId: project.id, closing }}
          mayWrite={mayAt(actor.grants, "project:write", project.siteId)}
        />
      ) : null}
    </>
  );
}
