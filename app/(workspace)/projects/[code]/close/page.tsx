import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { Breadcrumbs } from "@/app/_ui/Breadcrumbs";
import { Caution } from "@/app/_ui/Caution";
import { PageHeader } from "@/app/_ui/PageHeader";
import { Section } from "@/app/_ui/Section";
import { ProjectLinks } from "@/app/(workspace)/projects/[code]/_components/ProjectLinks";
import { Closed } from "@/app/(workspace)/projects/[code]/close/_components/Closed";
import { CloseNow } from "@/app/(workspace)/projects/[code]/close/_components/CloseNow";
import { FittedUnits } from "@/app/(workspace)/projects/[code]/close/_components/FittedUnits";
import { RemovedUnits } from "@/app/(workspace)/projects/[code]/close/_components/RemovedUnits";
import { Statements } from "@/app/(workspace)/projects/[code]/close/_components/Statements";
import { TopicTable } from "@/app/(workspace)/projects/[code]/close/_components/TopicTable";
import { signedInActor } from "@/lib/access/actor";
import { mayAt } from "@/lib/access/policy";
import { readAsOf } from "@/lib/data/asOf";
import { readProjectClose } from "@/lib/data/closeOut";
import { closeOut } from "@/lib/projects/closeOut";
import { closeLead } from "@/lib/view/closeOut";
import { inWords } from "@/lib/words/say";

interface ClosePageProps {
  readonly params: Promise<{ readonly code: string }>;
}

export async function generateMetadata({ params }: ClosePageProps): Promise<Metadata> {
  return { title: inWords(`Close-out of ${(await params).code}`) };
}

export default async function ClosePage({ params }: ClosePageProps) {
  const actor = await signedInActor();
  const { code } = await params;
  const [today, project] = await Promise.all([readAsOf(actor, undefined), readProjectClose(actor, code)]);
  if (!project) notFound();
  const items = closeOut(project.facts);
  const mayWrite = mayAt(actor.grants, "project:write", project.siteId);
  const mayMend = mayWrite && project.closing === null;
  const { id: projectId, version } = project;
  return (
    <>
      <PageHeader
        title={`Close-out of ${code}`}
        lead={closeLead(items, project.closing)}
        asOf={today}
        above={
          <Breadcrumbs
            crumbs={[
              { label: "Projects", href: "/projects" },
              { label: code, href: `/projects/${encodeURIComponent(code)}` },
            ]}
          />
        }
      />
      <ProjectLinks code={code} current="close" />
      {project.closing ? (
        <Closed {...{ code, projectId, version, mayWrite }} closing={project.closing} />
      ) : null}
      <Section
        title="What must be true"
        lead="Each line is worked out from the records; nothing here is ticked off by hand but what people answer for by name."
      >
        <TopicTable code={code} items={items} />
        {mayMend ? (
          <CloseNow project={project} lacking={items.some(({ missing }) => missing.length > 0)} />
        ) : null}
      </Section>
      <RemovedUnits project={project} today={today} mayWrite={mayMend} />
      <FittedUnits project={project} today={today} mayWrite={mayMend} />
      <Statements projectId={projectId} statements={project.statements} mayWrite={mayMend} />
      <Caution title="Removed drives: charged, heavy, and not spares until tested">
        The DC link of a drive that was just removed can still be charged: wait, measure, then handle. Test
        under load by competent persons only; one that lay for years needs care before it is powered. Nothing
        of unknown history goes into a safety function. Disposal follows the local rules for electrical waste.
      </Caution>
    </>
  );
}
