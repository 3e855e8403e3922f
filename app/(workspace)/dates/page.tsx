import { EmptyState } from "@/app/_ui/EmptyState";
import { LinkButton } from "@/app/_ui/LinkButton";
import { PageHeader } from "@/app/_ui/PageHeader";
import { Section } from "@/app/_ui/Section";
import { titled } from "@/app/_ui/titled";
import { BindingCaution } from "@/app/(workspace)/_components/BindingCaution";
import { DatesTable } from "@/app/(workspace)/dates/_components/DatesTable";
import { ObligationTable } from "@/app/(workspace)/dates/_components/ObligationTable";
import { WindowChoice } from "@/app/(workspace)/dates/_components/WindowChoice";
import { signedInActor } from "@/lib/access/actor";
import { lookingBack } from "@/lib/access/lookingBack";
import { readAsOf } from "@/lib/data/asOf";
import { readDatesAhead } from "@/lib/data/datesAhead";
import { readObligationPlaces } from "@/lib/data/obligations";
import { readSiteNames } from "@/lib/data/siteNames";
import { chooseDates, datesLead, dateWindow } from "@/lib/view/dateChoice";
import { datesAhead } from "@/lib/view/datesAhead";

export const generateMetadata = titled("Dates ahead");

interface DatesPageProps {
  readonly searchParams: Promise<{
    readonly asOf?: string;
    readonly within?: string;
    readonly site?: string;
  }>;
}

async function DatesPage({ searchParams }: DatesPageProps) {
  const actor = await signedInActor({ amounts: "hidden" });
  const { asOf: asked, within: window, site: code } = await searchParams;
  const asOf = await readAsOf(actor, asked);
  const [input, sites, places, today] = await Promise.all([
    readDatesAhead(actor, asOf),
    readSiteNames(actor),
    readObligationPlaces(actor),
    readAsOf(actor, undefined),
  ]);
  const dates = datesAhead(input);
  const site = sites.find((one) => one.code === code)?.code ?? null;
  const choice = { asOf, within: dateWindow(window), site };
  const shown = chooseDates(dates, choice);
  return (
    <>
      <PageHeader title="Dates ahead" lead={datesLead(shown, choice)} asOf={asOf} />
      {dates.length === 0 ? (
        <EmptyState title="No dates yet" actions={<LinkButton href="/lines">To the lines</LinkButton>}>
          Days of supply, approvals, projects and duties stand here as soon as registers are loaded or a
          safety or legal date is added below.
        </EmptyState>
      ) : (
        <>
          <WindowChoice {...choice} sites={sites} />
          <DatesTable dates={shown} asOf={asOf} />
        </>
      )}
      <Section
        id="binding"
        title="Safety and legal dates"
        lead="They bind whatever a line loses. No figure of loss, score or rank contains them, and none outweighs them."
      >
        <BindingCaution />
        <ObligationTable {...{ obligations: input.obligations, places, asOf, today }} />
      </Section>
    </>
  );
}

export default lookingBack(DatesPage);
