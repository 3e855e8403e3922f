import { notFound } from "next/navigation";
import { EmptyState } from "@/app/_ui/EmptyState";
import { LinkButton } from "@/app/_ui/LinkButton";
import { PageHeader } from "@/app/_ui/PageHeader";
import { Section } from "@/app/_ui/Section";
import { titled } from "@/app/_ui/titled";
import { InstalledTable } from "@/app/(workspace)/installed/_components/InstalledTable";
import { MapPath } from "@/app/(workspace)/installed/_components/MapPath";
import { RingList } from "@/app/(workspace)/installed/_components/RingList";
import { signedInActor } from "@/lib/access/actor";
import { readAsOf } from "@/lib/data/asOf";
import { readInstalled } from "@/lib/data/installed";
import { readRingsOfLine } from "@/lib/data/rings";
import { installedLead, installedTitle, readInstalledLevel } from "@/lib/view/installed";

export const generateMetadata = titled("Installed");

interface InstalledPageProps {
  readonly searchParams: Promise<{ readonly asOf?: string; readonly site?: string; readonly line?: string }>;
}

export default async function InstalledPage({ searchParams }: InstalledPageProps) {
  const actor = await signedInActor({ amounts: "hidden" });
  const { asOf: asked, ...params } = await searchParams;
  const asOf = await readAsOf(actor, asked);
  const map = await readInstalled(actor, { asOf, level: readInstalledLevel(params) });
  if (map === null) notFound();
  const rings = map.line ? await readRingsOfLine(actor, { code: map.line.code, asOf }) : [];
  return (
    <>
      <PageHeader
        title={installedTitle(map)}
        lead={installedLead(map)}
        asOf={asOf}
        above={<MapPath map={map} />}
        actions={<LinkButton href="/axes">All axes</LinkButton>}
      />
      {map.rows.length === 0 ? (
        <EmptyState
          title="Nothing is recorded here"
          actions={<LinkButton href="/import">Import a register</LinkButton>}
        >
          Sites, lines, machines and axes stand here as soon as an asset register and an axis survey are
          loaded.
        </EmptyState>
      ) : (
        <InstalledTable level={map.level} rows={map.rows} />
      )}
      {map.line ? (
        <Section title="Rings" lead="One light path: any node that fails stops every axis of its ring.">
          <RingList rings={rings} />
        </Section>
      ) : null}
    </>
  );
}
