import { Breadcrumbs } from "@/app/_ui/Breadcrumbs";
import { PageHeader } from "@/app/_ui/PageHeader";
import { Section } from "@/app/_ui/Section";
import { Arithmetic } from "@/app/(workspace)/lines/[code]/_components/Arithmetic";
import { Blockers } from "@/app/(workspace)/lines/[code]/_components/Blockers";
import { DriversTable } from "@/app/(workspace)/lines/[code]/_components/DriversTable";
import { EditFigures } from "@/app/(workspace)/lines/[code]/_components/EditFigures";
import { EventsTable } from "@/app/(workspace)/lines/[code]/_components/EventsTable";
import { LineFigures } from "@/app/(workspace)/lines/[code]/_components/LineFigures";
import { LineLinks } from "@/app/(workspace)/lines/[code]/_components/LineLinks";
import { Machines } from "@/app/(workspace)/lines/[code]/_components/Machines";
import { Place } from "@/app/(workspace)/lines/[code]/_components/Place";
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
        title="What drives it"
        lead="Parts on the line by what they add. The foot is the line's own figure."
      >
        <DriversTable code={code} drivers={line.drivers} result={line.result} />
      </Section>
      <Section id="arithmetic" title="The arithmetic, opened">
        <Arithmetic line={line} poolId={part} />
      </Section>
      <Section title="What blocks new drives">
        <Blockers line={line} />
      </Section>
      <Section title="Machines and axes">
        <Machines machines={line.machines} floor={line.firmwareFloor} />
      </Section>
      <Section
        title="Events of the last five years"
        lead={`In the time of ${site.name}. Grey rows do not count; the last column says why.`}
      >
        <EventsTable code={code} events={line.events} />
      </Section>
      <Section title="Projects and plans">
        <LineLinks projects={line.projects} plans={line.plans} />
      </Section>
    </>
  );
}
