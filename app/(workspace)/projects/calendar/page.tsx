import { Breadcrumbs } from "@/app/_ui/Breadcrumbs";
import { EmptyState } from "@/app/_ui/EmptyState";
import { LinkButton } from "@/app/_ui/LinkButton";
import { Notice } from "@/app/_ui/Notice";
import { PageHeader } from "@/app/_ui/PageHeader";
import { titled } from "@/app/_ui/titled";
import { SiteCalendar } from "@/app/(workspace)/projects/calendar/_components/SiteCalendar";
import { signedInActor } from "@/lib/access/actor";
import { readAsOf } from "@/lib/data/asOf";
import { readProjectCalendar } from "@/lib/data/projectCalendar";
import { calendarView } from "@/lib/view/projectCalendar";
import "@/app/(workspace)/projects/_components/landscape.css";

export const generateMetadata = titled("Shutdowns and projects");

interface CalendarPageProps {
  readonly searchParams: Promise<{ readonly asOf?: string }>;
}

export default async function CalendarPage({ searchParams }: CalendarPageProps) {
  const actor = await signedInActor({ amounts: "hidden" });
  const asOf = await readAsOf(actor, (await searchParams).asOf);
  const view = calendarView(await readProjectCalendar(actor, asOf), asOf);
  return (
    <div className="paper-landscape">
      <PageHeader
        title="Shutdowns and projects"
        lead="The work of projects that needs a line to stand still, against the shutdowns on record, by site."
        asOf={asOf}
        above={<Breadcrumbs crumbs={[{ label: "Projects", href: "/projects" }]} />}
      />
      {view.crewClashes.length > 0 ? (
        <Notice kind="caution" title="More crews are needed than there are">
          <ul className="list-disc pl-5">
            {view.crewClashes.map((text) => (
              <li key={text}>{text}</li>
            ))}
          </ul>
        </Notice>
      ) : null}
      {view.sites.length === 0 ? (
        <EmptyState
          title="No shutdowns at your sites"
          actions={<LinkButton href="/plans/inputs">Planning figures</LinkButton>}
        >
          Shutdowns are stated with the planning figures or loaded under Import.
        </EmptyState>
      ) : (
        view.sites.map((site) => <SiteCalendar key={site.id} site={site} view={view} asOf={asOf} />)
      )}
    </div>
  );
}
