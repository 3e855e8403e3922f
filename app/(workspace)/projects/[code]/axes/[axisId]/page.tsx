import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { Breadcrumbs } from "@/app/_ui/Breadcrumbs";
import { Caution } from "@/app/_ui/Caution";
import { PageHeader } from "@/app/_ui/PageHeader";
import { RecordedScaling } from "@/app/(workspace)/projects/[code]/axes/[axisId]/_components/RecordedScaling";
import { RecordSheet } from "@/app/(workspace)/projects/[code]/axes/[axisId]/_components/RecordSheet";
import { signedInActor } from "@/lib/access/actor";
import { mayAt } from "@/lib/access/policy";
import { readAsOf } from "@/lib/data/asOf";
import { readAxisRecord } from "@/lib/data/axisRecord";

interface AxisPageProps {
  readonly params: Promise<{ readonly code: string; readonly axisId: string }>;
  readonly searchParams: Promise<{ readonly asOf?: string }>;
}

export const metadata: Metadata = { title: "Axis record" };

export default async function AxisPage({ params, searchParams }: AxisPageProps) {
  const actor = await signedInActor();
  const asked = await params;
  const asOf = await readAsOf(actor, (await searchParams).asOf);
  const axis = await readAxisRecord(actor, asked);
  if (!axis) notFound();
  const project = `/projects/${axis.projectCode}`;
  return (
    <>
      <PageHeader
        title={`Axis record ${axis.machineCode} ${axis.code}`}
        lead={`${axis.name ?? axis.machineName}, line ${axis.lineCode} ${axis.lineName}, project ${axis.projectName}.`}
        asOf={asOf}
        above={
          <Breadcrumbs
            crumbs={[
              { label: "Projects", href: "/projects" },
              { label: axis.projectCode, href: project },
              { label: "Axis records", href: `${project}/axes` },
            ]}
          />
        }
      />
      <RecordedScaling axis={axis} />
      <Caution title="First motion, stored energy, falling axes">
        Qualified people only; lock out and prove the absence of voltage before anything is touched, by the
        law and rules of the site. First motion at reduced torque and speed with nobody in reach. This sheet
        keeps what was measured; it computes no guard distance and certifies no safety function. Whoever is
        competent for the machine decides.
      </Caution>
      <RecordSheet
        axis={axis}
        mayRecord={mayAt(actor.grants, "event:write", axis.siteId) && axis.acceptedOn === null}
        mayAccept={mayAt(actor.grants, "project:write", axis.siteId)}
      />
    </>
  );
}
