import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { Breadcrumbs } from "@/app/_ui/Breadcrumbs";
import { LinkButton } from "@/app/_ui/LinkButton";
import { PageHeader } from "@/app/_ui/PageHeader";
import { ProjectCautions } from "@/app/(workspace)/projects/[code]/_components/ProjectCautions";
import { ProjectLinks } from "@/app/(workspace)/projects/[code]/_components/ProjectLinks";
import { Gates } from "@/app/(workspace)/projects/[code]/schedule/_components/Gates";
import { Replans } from "@/app/(workspace)/projects/[code]/schedule/_components/Replans";
import { ScheduleBoard } from "@/app/(workspace)/projects/[code]/schedule/_components/ScheduleBoard";
import { signedInActor } from "@/lib/access/actor";
import { mayAt } from "@/lib/access/policy";
import { readAsOf } from "@/lib/data/asOf";
import { readSchedule } from "@/lib/data/schedule";
import { inWords } from "@/lib/words/say";
import "@/app/(workspace)/projects/_components/landscape.css";

interface SchedulePageProps {
  readonly params: Promise<{ readonly code: string }>;
  readonly searchParams: Promise<{ readonly asOf?: string }>;
}

export async function generateMetadata({ params }: SchedulePageProps): Promise<Metadata> {
  return { title: inWords(`Schedule of ${(await params).code}`) };
}

export default async function SchedulePage({ params, searchParams }: SchedulePageProps) {
  const actor = await signedInActor({ amounts: "hidden", to: "contractors" });
  const { code } = await params;
  const asOf = await readAsOf(actor, (await searchParams).asOf);
  const file = await readSchedule(actor, code);
  if (!file) notFound();
  const mayWrite = mayAt(actor.grants, "project:write", file.siteId);
  return (
    <div className="paper-landscape">
      <PageHeader
        title={`Schedule of ${code}`}
        lead={`${file.name}, ${file.siteName}. Working days are Monday to Friday; public holidays are not on record.`}
        asOf={asOf}
        above={
          <Breadcrumbs
            crumbs={[
              { label: "Projects", href: "/projects" },
              { label: code, href: `/projects/${code}` },
            ]}
          />
        }
        actions={<LinkButton href="/projects/calendar">Shutdowns and projects</LinkButton>}
      />
      <ProjectLinks code={code} current="schedule" outside={!mayAt(actor.grants, "read", file.siteId)} />
      <ScheduleBoard {...{ file, asOf, mayWrite }} />
      <Gates projectId={file.projectId} gates={file.gates} tasks={file.tasks} mayWrite={mayWrite} />
      <Replans replans={file.replans} />
      <ProjectCautions />
    </div>
  );
}
