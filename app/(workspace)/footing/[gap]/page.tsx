import { notFound } from "next/navigation";
import { Breadcrumbs } from "@/app/_ui/Breadcrumbs";
import { LinkButton } from "@/app/_ui/LinkButton";
import { Notice } from "@/app/_ui/Notice";
import { PageHeader } from "@/app/_ui/PageHeader";
import { titled } from "@/app/_ui/titled";
import { SiteTabs } from "@/app/(workspace)/_components/SiteTabs";
import { GapTable } from "@/app/(workspace)/footing/[gap]/_components/GapTable";
import { signedInActor } from "@/lib/access/actor";
import { maySomewhere } from "@/lib/access/policy";
import { readAsOf } from "@/lib/data/asOf";
import { MOST_GAP_ROWS, readGapRows } from "@/lib/data/gapRows";
import { readSiteNames } from "@/lib/data/siteNames";
import { findGap, gapNoun } from "@/lib/view/gap";
import { count, plainNumber } from "@/lib/view/number";

export const generateMetadata = titled("Records to mend");

interface GapPageProps {
  readonly params: Promise<{ readonly gap: string }>;
  readonly searchParams: Promise<{ readonly asOf?: string; readonly site?: string }>;
}

export default async function GapPage({ params, searchParams }: GapPageProps) {
  const actor = await signedInActor({ amounts: "hidden" });
  const { asOf: asked, site: siteAsked } = await searchParams;
  const gap = findGap((await params).gap);
  const sites = await readSiteNames(actor);
  const site = sites.find(({ code }) => code === siteAsked) ?? null;
  if (gap === null || (siteAsked !== undefined && site === null)) notFound();
  const asOf = await readAsOf(actor, asked);
  const { rows, total } = await readGapRows(actor, { gap, siteCode: site?.code ?? null, asOf });
  const query = site === null ? "" : `?site=${encodeURIComponent(site.code)}`;
  return (
    <>
      <PageHeader
        title={gap.title}
        lead={`${count(total, ...gapNoun(gap.subject))}. ${gap.why}`}
        asOf={asOf}
        above={<Breadcrumbs crumbs={[{ label: "Data footing", href: `/footing${query}` }]} />}
        actions={
          maySomewhere(actor.grants, "register:import") ? (
            <LinkButton href="/import">Mend many by a file</LinkButton>
          ) : null
        }
      />
      <SiteTabs sites={sites} site={site} href={`/footing/${gap.key}`} all="All sites" />
      {total > rows.length ? (
        <Notice kind="info" title={`The first ${plainNumber(MOST_GAP_ROWS)} of ${plainNumber(total)}`}>
          Choose a site to see fewer. So many are mended in a register file rather than one by one.
        </Notice>
      ) : null}
      <GapTable gap={gap} rows={rows} />
    </>
  );
}
