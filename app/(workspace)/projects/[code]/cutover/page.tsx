import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { Breadcrumbs } from "@/app/_ui/Breadcrumbs";
import { EmptyState } from "@/app/_ui/EmptyState";
import { PageHeader } from "@/app/_ui/PageHeader";
import { Tabs } from "@/app/_ui/Tabs";
import { ProjectLinks } from "@/app/(workspace)/projects/[code]/_components/ProjectLinks";
import { Compared } from "@/app/(workspace)/projects/[code]/cutover/_components/Compared";
import { CutoverCautions } from "@/app/(workspace)/projects/[code]/cutover/_components/CutoverCautions";
import { CutoverForm } from "@/app/(workspace)/projects/[code]/cutover/_components/CutoverForm";
import { CutoverLive } from "@/app/(workspace)/projects/[code]/cutover/_components/CutoverLive";
import { CutoverPaper } from "@/app/(workspace)/projects/[code]/cutover/_components/CutoverPaper";
import { signedInActor } from "@/lib/access/actor";
import { mayAt } from "@/lib/access/policy";
import { readAsOf } from "@/lib/data/asOf";
import { readCutovers } from "@/lib/data/cutover";
import { cutoverDay, cutoverStanding, lastEntry } from "@/lib/view/cutover";
import { count } from "@/lib/view/number";
import { day } from "@/lib/view/time";
import { inWords } from "@/lib/words/say";

interface CutoverPageProps {
  readonly params: Promise<{ readonly code: string }>;
  readonly searchParams: Promise<{ readonly plan?: string }>;
}

export async function generateMetadata({ params }: CutoverPageProps): Promise<Metadata> {
  return { title: inWords(`Cutover of ${(await params).code}`) };
}

export default async function CutoverPage({ params, searchParams }: CutoverPageProps) {
  const actor = await signedInActor({ amounts: "hidden", to: "contractors" });
  const [{ code }, asked] = await Promise.all([params, searchParams]);
  const [today, project] = await Promise.all([readAsOf(actor, undefined), readCutovers(actor, code)]);
  if (!project) notFound();
  const { timeZone, cutovers, id: projectId } = project;
  const plan = cutovers.find(({ id }) => id === asked.plan) ?? cutovers[0] ?? null;
  const mayWrite = mayAt(actor.grants, "project:write", project.siteId) && project.status !== "closed";
  const form = { projectId, timeZone, today };
  return (
    <>
      <PageHeader
        title={`Cutover of ${code}`}
        lead={
          plan
            ? `${plan.name}: ${count(plan.steps.length, "step")} from ${day(cutoverDay(plan, timeZone))}, by the clock of ${timeZone}.`
            : "No cutover is planned by the hour yet."
        }
        asOf={today}
        above={
          <Breadcrumbs
            crumbs={[
              { label: "Projects", href: "/projects" },
              { label: code, href: `/projects/${encodeURIComponent(code)}` },
            ]}
          />
        }
        actions={mayWrite ? <CutoverForm {...form} plan={null} /> : null}
      />
      <ProjectLinks code={code} current="cutover" outside={!mayAt(actor.grants, "read", project.siteId)} />
      {cutovers.length > 1 ? (
        <Tabs
          label="Which cutover"
          tabs={cutovers.map(({ id, name }) => ({
            ...{ label: name, href: `/projects/${encodeURIComponent(code)}/cutover?plan=${id}` },
            current: id === plan?.id,
          }))}
        />
      ) : null}
      {plan === null ? (
        <EmptyState title="No cutover is planned">
          Plan one by the hour: who does what from when, what it needs, and until when the old system can be
          put back. You can begin with the usual steps and change them.
        </EmptyState>
      ) : (
        <>
          <CutoverLive key={plan.id} {...{ plan, timeZone, mayWrite, projectId, today }} />
          <CutoverPaper plan={plan} timeZone={timeZone} />
          <Compared plan={plan} standing={cutoverStanding(plan, lastEntry(plan.steps))} />
          <CutoverCautions plan={plan} />
        </>
      )}
    </>
  );
}
