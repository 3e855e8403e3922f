import { Breadcrumbs } from "@/app/_ui/Breadcrumbs";
import { LinkButton } from "@/app/_ui/LinkButton";
import { PageHeader } from "@/app/_ui/PageHeader";
import { Section } from "@/app/_ui/Section";
import { Arithmetic } from "@/app/(workspace)/lines/[code]/_components/Arithmetic";
import { BindingDates } from "@/app/(workspace)/lines/[code]/_components/BindingDates";
import { Blockers } from "@/app/(workspace)/lines/[code]/_components/Blockers";
import { DriversTable } from "@/app/(workspace)/lines/[code]/_components/DriversTable";
import { EditFigures } from "@/app/(workspace)/lines/[code]/_components/EditFigures";
import { EventsTable } from "@/app/(workspace)/lines/[code]/_components/EventsTable";
import { LineDowntime } from "@/app/(workspace)/lines/[code]/_components/LineDowntime";
import { LineFigures } from "@/app/(workspace)/lines/[code]/_components/LineFigures";
import { LineLinks } from "@/app/(workspace)/lines/[code]/_components/LineLinks";
import { Machines } from "@/app/(workspace)/lines/[code]/_components/Machines";
import { Place } from "@/app/(workspace)/lines/[code]/_components/Place";
import { StopCost } from "@/app/(workspace)/lines/[code]/_components/StopCost";
import type { LineDossier } from "@/lib/view/lineDossier";
import { leadOfDossier } from "@/lib/view/lineLead";

interface DossierProps {
  readonly line: LineDossier;
  /** Pool whose arithmetic is opened. */
  readonly part: string | undefined;
  readonly mayEdit: boolean;
}

/** Everything known of one line on one page. */
export function Dossier({ line, part, mayEdit }: DossierProps) {
  const { code, site } = line;
  return (
    <>
      <PageHeader
        title={`${code} ${line.name}`}
        lead={leadOfDossier(line)}
        asOf={line.asOf}
        above={<Breadcrumbs crumbs={[{ label: "Lines", href: "/lines" }]} />}
        actions={
          mayEdit ? (
            <EditFigures id={line.id} code={code} stored={line.stored} currency={site.currency} />
          ) : null
        }
      />
      <LineFigures line={line} />
      {line.note === null ? null : <p className="measure">On record: {line.note}</p>}
      <Section id="place" title="How sure is its place">
        <Place line={line} />
      </Section>
      <Section
        id="binding"
        title="Binding dates"
        lead="Safety and legal dates: beside the money, never in it."
      >
        <BindingDates line={line} />
      </Section>
      <Section id="stop-cost" title="What a stop costs">
        <StopCost line={line} />
      </Section>
      <Section
        title="What drives it"
        lead="Parts on the line by what they add. The foot is the line's own figure."
      >
        <DriversTable code={code} drivers={line.drivers} result={line.result} />
      </Section>
      <Section id="arithmetic" title="The arithmetic, opened">
        <Arithmetic line={line} poolId={part} />
      </Section>
      <Section
        id="downtime"
        title="How long it stands"
        lead="Stops of the last five years by class, split into waiting for an item and work."
      >
        <LineDowntime line={line} />
      </Section>
      <Section
        id="blockers"
        title="What stands in the way of a retrofit"
        actions={<LinkButton href={`/lines/${code}/scope`}>What a retrofit takes</LinkButton>}
      >
        <Blockers line={line} />
      </Section>
      <Section title="Machines and axes">
        <Machines machines={line.machines} judged={line.compatibility.controllers} />
      </Section>
      <Section
        id="events"
        title="Events of the last five years"
        lead={`In the time of ${site.name}. Grey rows do not count; the last column says why.`}
        actions={<LinkButton href={`/events/new?line=${code}`}>Record an event</LinkButton>}
      >
        <EventsTable code={code} events={line.events} />
      </Section>
      <Section title="Projects and plans">
        <LineLinks projects={line.projects} plans={line.plans} />
      </Section>
    </>
  );
}
