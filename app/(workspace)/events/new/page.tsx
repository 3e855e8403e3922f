import { Caution } from "@/app/_ui/Caution";
import { EmptyState } from "@/app/_ui/EmptyState";
import { PageHeader } from "@/app/_ui/PageHeader";
import { titled } from "@/app/_ui/titled";
import { EventForm } from "@/app/(workspace)/events/new/_components/EventForm";
import { PlaceChoice } from "@/app/(workspace)/events/new/_components/PlaceChoice";
import { signedInActor } from "@/lib/access/actor";
import { readAsOf } from "@/lib/data/asOf";
import { readEventPlaces } from "@/lib/data/eventPlaces";

export const generateMetadata = titled("Record an event");

type Asked = Readonly<Partial<Record<"line" | "machine" | "position" | "asOf", string>>>;

export default async function NewEventPage({ searchParams }: { readonly searchParams: Promise<Asked> }) {
  const actor = await signedInActor({ amounts: "hidden" });
  const { line = "", machine = "", position = "", asOf: asked } = await searchParams;
  const asOf = await readAsOf(actor, asked);
  const places = await readEventPlaces(actor, { line, machine, position });
  const chosen = places.places.find(({ id }) => id === position) ?? null;
  return (
    <>
      <PageHeader
        title="Record an event"
        lead="A unit left its place: what it was, how long the line stood, where the spare came from."
        asOf={asOf}
      />
      {places.lines.length === 0 ? (
        <EmptyState title="There is no line where you may record an event">
          Ask an administrator for the role of a technician at your site.
        </EmptyState>
      ) : (
        <PlaceChoice places={places} chosen={{ line, machine, position }} />
      )}
      {chosen ? <EventForm key={chosen.id} place={chosen} spares={places.spares} line={line} /> : null}
      <h2 className="sr-only">Before you touch anything</h2>
      <Caution title="Stored energy: lock out, wait, measure">
        Qualified people only. Lock out, wait for the time on the unit's own label, prove the absence of
        voltage; hang up what can fall. Local law and the rules of the site come first.
      </Caution>
    </>
  );
}
