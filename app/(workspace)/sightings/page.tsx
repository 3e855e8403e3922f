import { notFound } from "next/navigation";
import { Caution } from "@/app/_ui/Caution";
import { EmptyState } from "@/app/_ui/EmptyState";
import { LinkButton } from "@/app/_ui/LinkButton";
import { PageHeader } from "@/app/_ui/PageHeader";
import { Section } from "@/app/_ui/Section";
import { titled } from "@/app/_ui/titled";
import { FootingTabs } from "@/app/(workspace)/_components/FootingTabs";
import { SiteTabs } from "@/app/(workspace)/_components/SiteTabs";
import { Compared } from "@/app/(workspace)/sightings/_components/Compared";
import { signedInActor } from "@/lib/access/actor";
import { maySomewhere } from "@/lib/access/policy";
import { readAsOf } from "@/lib/data/asOf";
import { readSightings } from "@/lib/data/sightings";
import { sightingsLead } from "@/lib/view/sighting";

export const generateMetadata = titled("Seen and on record");

interface SightingsPageProps {
  readonly searchParams: Promise<{ readonly asOf?: string; readonly site?: string }>;
}

export default async function SightingsPage({ searchParams }: SightingsPageProps) {
  const actor = await signedInActor({ amounts: "hidden" });
  const { asOf: asked, site: siteAsked } = await searchParams;
  const asOf = await readAsOf(actor, asked);
  const found = await readSightings(actor, { siteCode: siteAsked ?? null, asOf });
  if (found === null) notFound();
  const { site, sites, lists } = found;
  const mayImport = maySomewhere(actor.grants, "register:import");
  return (
    <>
      <PageHeader
        title="Seen and on record"
        lead={sightingsLead(found)}
        asOf={asOf}
        actions={mayImport ? <LinkButton href="/import">Load a network list</LinkButton> : null}
      />
      <FootingTabs current="/sightings" />
      <SiteTabs sites={sites} site={site} href="/sightings" />
      <Caution title="Never scan a live motion network" level={2}>
        Ebbline scans nothing: it reads lists made elsewhere, such as those a controller or a switch keeps.
        Active scans of a live motion network can stop machines. Changing firmware can stop production and
        void a validation: back up first, and let a competent person decide.
      </Caution>
      {site === null || lists.length === 0 ? (
        <EmptyState
          title={site === null ? "No site yet" : `No network list of ${site.code} is loaded`}
          actions={mayImport ? <LinkButton href="/import">Load a network list</LinkButton> : null}
        >
          A list of what was seen on a network stands beside the register here: what agrees, what differs,
          what is on record and was not seen, and what was seen and is not on record.
        </EmptyState>
      ) : (
        <Compared found={found} site={site} />
      )}
      <Section title="What a list can and cannot see">
        <p className="measure text-ink-2">
          It holds only what was powered and answered. Nodes of a ring usually appear behind their controller
          only, motors mostly not at all. A first list and a register commonly differ on 10 to 25 % of the
          nodes (common practice, no source). A list never retires, moves or deletes anything: a person
          decides, and every decision can be taken back.
        </p>
      </Section>
    </>
  );
}
