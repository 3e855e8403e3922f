import { notFound } from "next/navigation";
import { Fold } from "@/app/_ui/Fold";
import { KeyFigure } from "@/app/_ui/KeyFigure";
import { KeyFigures } from "@/app/_ui/KeyFigures";
import { PageHeader } from "@/app/_ui/PageHeader";
import { Section } from "@/app/_ui/Section";
import { titled } from "@/app/_ui/titled";
import { AmountsHidden } from "@/app/(workspace)/_components/AmountsHidden";
import { FootingTabs } from "@/app/(workspace)/_components/FootingTabs";
import { SiteTabs } from "@/app/(workspace)/_components/SiteTabs";
import { EffortTable } from "@/app/(workspace)/footing/_components/EffortTable";
import { FixMethod } from "@/app/(workspace)/footing/_components/FixMethod";
import { FixTable } from "@/app/(workspace)/footing/_components/FixTable";
import { FootingTable } from "@/app/(workspace)/footing/_components/FootingTable";
import { SiteMatrix } from "@/app/(workspace)/footing/_components/SiteMatrix";
import { signedInActor } from "@/lib/access/actor";
import { maySomewhere, seesAmounts } from "@/lib/access/policy";
import { readAsOf } from "@/lib/data/asOf";
import { maySetEffort } from "@/lib/data/effortNormChange";
import { type Footing, readFooting } from "@/lib/data/footing";
import { readNextFixes } from "@/lib/data/nextFixes";
import { lossOfLines } from "@/lib/risk/mending/gapEffect";
import { footingLead } from "@/lib/view/footing";
import { money } from "@/lib/view/format";
import { plainNumber } from "@/lib/view/number";
import { day } from "@/lib/view/time";

export const generateMetadata = titled("Data footing");

const RESTS =
  "“Rests on it” is the loss of the lines or parts whose records are poor: it is worked out with them. One loss can rest on several gaps, so they do not add up. Where no figure reads a record, its effect is not known.";

interface FootingPageProps {
  readonly searchParams: Promise<{ readonly asOf?: string; readonly site?: string }>;
}

export default async function FootingPage({ searchParams }: FootingPageProps) {
  const actor = await signedInActor({ amounts: "hidden" });
  const { asOf: asked, site: siteAsked } = await searchParams;
  const asOf = await readAsOf(actor, asked);
  const footing = await readFooting(actor, { asOf, siteCode: siteAsked ?? null });
  if (footing === null) notFound();
  const { rows, site, sites } = footing;
  const amounts = maySomewhere(actor.grants, "money:read");
  const next = await readNextFixes(actor, { footing, asOf });
  const open = rows.filter(({ missing }) => missing > 0);
  return (
    <>
      <PageHeader title="Data footing" lead={footingLead(rows, amounts)} asOf={asOf} />
      <FootingTabs current="/footing" />
      <SiteTabs sites={sites} site={site} href="/footing" all="All sites" />
      {seesAmounts(actor.grants) ? null : <AmountsHidden />}
      {amounts ? <LossFigures footing={footing} asOf={asOf} /> : null}
      <Section
        title="Gaps"
        id="gaps"
        lead={amounts ? RESTS : "Records that are missing, old, contradictory or guessed; a row opens them."}
      >
        <FootingTable rows={open} siteCode={site?.code ?? null} showsAmounts={amounts} />
      </Section>
      <Section
        title="Next best fixes"
        id="fixes"
        lead="What settles most of the ranking, or of the loss, for an hour of work. An order to look in, not a judgement on anybody's records."
      >
        <FixTable fixes={next.fixes} showsAmounts={amounts} />
        <FixMethod next={next} showsAmounts={amounts} />
      </Section>
      {site === null && sites.length > 1 ? (
        <Section title="By site" id="by-site">
          <SiteMatrix rows={open} sites={sites} />
        </Section>
      ) : null}
      <div className="mt-9">
        <Fold
          title="Hours to mend"
          id="hours"
          page="footing"
          lead="What one record takes, from finding the place to writing it down. Common practice, no source, until somebody sets hours of their own."
        >
          <EffortTable rows={rows} mayChange={maySetEffort(actor)} />
        </Fold>
      </div>
    </>
  );
}

function LossFigures({ footing, asOf }: { readonly footing: Footing; readonly asOf: string }) {
  const { lines, engine, dataVersion } = footing;
  const fromUnknown = lines.reduce((sum, { result }) => sum + (result.unknownLoss ?? 0), 0);
  const costless = lines.filter(({ result }) => result.stopLoss === null).length;
  return (
    <KeyFigures>
      <KeyFigure label="Stop loss" value={money(lossOfLines(lines))} unit="a year" date={day(asOf)} />
      <KeyFigure
        label="Of it from not knowing"
        value={money(fromUnknown)}
        unit="a year"
        date={`${engine}, data version ${dataVersion}`}
      />
      <KeyFigure label="Lines without a loss in money" value={plainNumber(costless)} date={day(asOf)} />
    </KeyFigures>
  );
}
