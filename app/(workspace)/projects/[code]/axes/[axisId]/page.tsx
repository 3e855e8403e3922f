import { notFound } from "next/navigation";
import { Breadcrumbs } from "@/app/_ui/Breadcrumbs";
import { LinkButton } from "@/app/_ui/LinkButton";
import { PageHeader } from "@/app/_ui/PageHeader";
import { titled } from "@/app/_ui/titled";
import { AxisCautions } from "@/app/(workspace)/projects/[code]/axes/[axisId]/_components/AxisCautions";
import { PaperAcceptance } from "@/app/(workspace)/projects/[code]/axes/[axisId]/_components/PaperAcceptance";
import { PaperBefore } from "@/app/(workspace)/projects/[code]/axes/[axisId]/_components/PaperBefore";
import { RecordedScaling } from "@/app/(workspace)/projects/[code]/axes/[axisId]/_components/RecordedScaling";
import { RecordSheet } from "@/app/(workspace)/projects/[code]/axes/[axisId]/_components/RecordSheet";
import { signedInActor } from "@/lib/access/actor";
import { mayAt, mayInProject } from "@/lib/access/policy";
import { readAsOf } from "@/lib/data/asOf";
import { readAxisRecord } from "@/lib/data/axisRecord";

interface AxisPageProps {
  readonly params: Promise<{ readonly code: string; readonly axisId: string }>;
  readonly searchParams: Promise<{ readonly asOf?: string }>;
}

export const generateMetadata = titled("Axis record");

export default async function AxisPage({ params, searchParams }: AxisPageProps) {
  const actor = await signedInActor({ amounts: "hidden", to: "contractors" });
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
        actions={
          mayAt(actor.grants, "read", axis.siteId) ? (
            <LinkButton href={`/audit?of=axis&id=${axis.id}`}>History</LinkButton>
          ) : null
        }
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
      <div className="paper-sheet">
        <RecordedScaling axis={axis} />
        <AxisCautions />
      </div>
      <div className="no-print">
        <RecordSheet
          axis={axis}
          mayRecord={mayInProject(actor.grants, "event:write", axis) && axis.acceptedOn === null}
          mayAccept={mayAt(actor.grants, "project:write", axis.siteId)}
        />
      </div>
      <div className="paper-sheet hidden print:block">
        <PaperBefore axis={axis} />
        <PaperAcceptance axis={axis} />
        <AxisCautions />
      </div>
    </>
  );
}
