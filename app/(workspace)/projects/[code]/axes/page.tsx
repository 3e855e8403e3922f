import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { Breadcrumbs } from "@/app/_ui/Breadcrumbs";
import { EmptyState } from "@/app/_ui/EmptyState";
import { PageHeader } from "@/app/_ui/PageHeader";
import { Section } from "@/app/_ui/Section";
import { ProjectLinks } from "@/app/(workspace)/projects/[code]/_components/ProjectLinks";
import { AxisMatrix } from "@/app/(workspace)/projects/[code]/axes/_components/AxisMatrix";
import { AxisTable } from "@/app/(workspace)/projects/[code]/axes/_components/AxisTable";
import { signedInActor } from "@/lib/access/actor";
import { mayAt, mayInProject } from "@/lib/access/policy";
import { readAsOf } from "@/lib/data/asOf";
import { readProjectAxes } from "@/lib/data/axisRecord";
import { readAxisSteps } from "@/lib/data/axisSteps";
import { inWords } from "@/lib/words/say";

interface AxesPageProps {
  readonly params: Promise<{ readonly code: string }>;
  readonly searchParams: Promise<{ readonly asOf?: string }>;
}

export async function generateMetadata({ params }: AxesPageProps): Promise<Metadata> {
  return { title: inWords(`Axis records of ${(await params).code}`) };
}

export default async function AxesPage({ params, searchParams }: AxesPageProps) {
  const actor = await signedInActor({ amounts: "hidden", to: "contractors" });
  const { code } = await params;
  const asOf = await readAsOf(actor, (await searchParams).asOf);
  const [axes, steps] = await Promise.all([readProjectAxes(actor, code), readAxisSteps(actor, code)]);
  if (!axes || !steps) notFound();
  const accepted = axes.filter(({ acceptedOn }) => acceptedOn !== null).length;
  return (
    <>
      <PageHeader
        title={`Axis records of ${code}`}
        lead={`${accepted} of ${axes.length} axes accepted. What was measured before the old drives left, and after the new ones ran.`}
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
      <ProjectLinks code={code} current="axes" outside={!mayAt(actor.grants, "read", steps.siteId)} />
      {axes.length === 0 ? (
        <EmptyState title="The line of this project has no axes yet">
          Load its axis register under Import, then each axis has a record here.
        </EmptyState>
      ) : (
        <>
          <AxisMatrix
            {...{ code, asOf, file: steps, me: actor.name }}
            mayMark={mayInProject(actor.grants, "event:write", steps)}
            mayPlan={mayAt(actor.grants, "project:write", steps.siteId)}
          />
          <Section title="Records">
            <AxisTable code={code} axes={axes} />
          </Section>
        </>
      )}
    </>
  );
}
