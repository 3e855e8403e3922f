import { Breadcrumbs } from "@/app/_ui/Breadcrumbs";
import { Contents } from "@/app/_ui/Contents";
import { Fold } from "@/app/_ui/Fold";
import { LinkButton } from "@/app/_ui/LinkButton";
import { OpenTarget } from "@/app/_ui/OpenTarget";
import { PageHeader } from "@/app/_ui/PageHeader";
import { Section } from "@/app/_ui/Section";
import { AmountsHidden } from "@/app/(workspace)/_components/AmountsHidden";
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
import { lineFolds } from "@/lib/view/lineFolds";
import { leadOfDossier } from "@/lib/view/lineLead";
import { approvalEnded } from "@/lib/view/lineRanking";

const TITLES = {
  place: "How sure is its place",
  binding: "Binding dates",
  "stop-cost": "What a stop costs",
  drivers: "What drives it",
  arithmetic: "The arithmetic, opened",
  downtime: "How long it stands",
  blockers: "What stands in the way of a retrofit",
  machines: "Machines and axes",
  events: "Events of the last five years",
  plans: "Projects and plans",
} as const;

const CONTENTS = Object.entries(TITLES).map(([id, title]) => ({ id, title }));

/** What there is nothing to say in where amounts are not shown. */
const OF_AMOUNTS: readonly string[] = ["place", "stop-cost"];

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
          <>
            <LinkButton href={`/lines/${code}/scope`}>What a retrofit takes</LinkButton>
            <LinkButton href={`/events/new?line=${code}`}>Record an event</LinkButton>
            <LinkButton href={`/audit?of=line&id=${line.id}`}>History</LinkButton>
            {mayEdit && line.showsAmounts ? (
              <EditFigures id={line.id} code={code} stored={line.stored} currency={site.currency} />
            ) : null}
          </>
        }
      />
      {line.showsAmounts ? null : <AmountsHidden />}
      <LineFigures line={line} />
      {line.note === null ? null : <p className="measure">On record: {line.note}</p>}
      <div className="mt-6">
        <Contents parts={CONTENTS.filter(({ id }) => line.showsAmounts || !OF_AMOUNTS.includes(id))} />
      </div>
      <Standing line={line} />
      <Section
        id="drivers"
        title="What drives it"
        lead="Parts on the line by what they add. The foot is the line's own figure."
      >
        <DriversTable
          {...{ code, drivers: line.drivers, result: line.result, showsAmounts: line.showsAmounts }}
        />
      </Section>
      <Records line={line} part={part} />
      <OpenTarget />
    </>
  );
}

/** How sure the figures are and what binds beside them. */
function Standing({ line }: Pick<DossierProps, "line">) {
  const figures = lineFolds(line);
  return (
    <>
      {line.showsAmounts ? (
        <Fold page="line" id="place" title={TITLES.place} figure={figures.place}>
          <Place line={line} />
        </Fold>
      ) : null}
      <Fold
        page="line"
        id="binding"
        title={TITLES.binding}
        figure={figures.binding}
        open={line.obligations.some(({ doneOn }) => doneOn === null)}
        lead="Safety and legal dates: beside the money, never in it."
      >
        <BindingDates line={line} />
      </Fold>
      {line.showsAmounts ? (
        <Fold
          page="line"
          id="stop-cost"
          title={TITLES["stop-cost"]}
          figure={figures.stopCost}
          open={approvalEnded(line.cost, line.asOf)}
        >
          <StopCost line={line} />
        </Fold>
      ) : null}
    </>
  );
}

/** What the figures are made of, and what is known of the line itself. */
function Records({ line, part }: Omit<DossierProps, "mayEdit">) {
  const { code, site } = line;
  const figures = lineFolds(line);
  return (
    <div className="mt-9 border-rule-2 border-t">
      <Fold
        page="line"
        id="arithmetic"
        title={TITLES.arithmetic}
        figure={
          line.showsAmounts ? "from records to money, step by step" : "from records to score, step by step"
        }
        open={part !== undefined}
      >
        <Arithmetic line={line} poolId={part} />
      </Fold>
      <Fold
        page="line"
        id="downtime"
        title={TITLES.downtime}
        figure={figures.downtime}
        lead="Stops of the last five years by class, split into waiting for an item and work."
      >
        <LineDowntime line={line} />
      </Fold>
      <Fold page="line" id="blockers" title={TITLES.blockers} figure={figures.blockers}>
        <Blockers line={line} />
      </Fold>
      <Fold page="line" id="machines" title={TITLES.machines} figure={figures.machines}>
        <Machines machines={line.machines} judged={line.compatibility.controllers} />
      </Fold>
      <Fold
        page="line"
        id="events"
        title={TITLES.events}
        figure={figures.events}
        lead={`In the time of ${site.name}. Grey rows do not count; the last column says why.`}
      >
        <EventsTable code={code} events={line.events} />
      </Fold>
      <Fold page="line" id="plans" title={TITLES.plans} figure={figures.links}>
        <LineLinks projects={line.projects} plans={line.plans} />
      </Fold>
    </div>
  );
}
