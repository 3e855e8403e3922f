import { LinkButton } from "@/app/_ui/LinkButton";
import { Notice } from "@/app/_ui/Notice";
import { PageHeader } from "@/app/_ui/PageHeader";
import { Section } from "@/app/_ui/Section";
import { Tabs } from "@/app/_ui/Tabs";
import { titled } from "@/app/_ui/titled";
import { AllEvents } from "@/app/(workspace)/events/_components/AllEvents";
import { LikelyPairs } from "@/app/(workspace)/events/_components/LikelyPairs";
import { SettledPairs } from "@/app/(workspace)/events/_components/SettledPairs";
import { signedInActor } from "@/lib/access/actor";
import { maySomewhere } from "@/lib/access/policy";
import { readAsOf } from "@/lib/data/asOf";
import { readEvents, readLikelyPairs, readSettledPairs } from "@/lib/data/events";
import { count } from "@/lib/view/number";

export const generateMetadata = titled("Events");

const SPANS = [
  { days: 90, label: "90 days" },
  { days: 366, label: "A year" },
  { days: 1827, label: "Five years" },
] as const;

interface EventsPageProps {
  readonly searchParams: Promise<{ readonly asOf?: string; readonly days?: string }>;
}

export default async function EventsPage({ searchParams }: EventsPageProps) {
  const actor = await signedInActor({ amounts: "hidden" });
  const { asOf: asked, days: askedDays } = await searchParams;
  const asOf = await readAsOf(actor, asked);
  const span = SPANS.find(({ days }) => String(days) === askedDays) ?? SPANS[1];
  const [{ events, cut }, likely, settled] = await Promise.all([
    readEvents(actor, { asOf, days: span.days }),
    readLikelyPairs(actor, asOf),
    readSettledPairs(actor),
  ]);
  const aside = events.filter(({ setAside }) => setAside !== null).length;
  const mayWrite = maySomewhere(actor.grants, "event:write");
  return (
    <>
      <PageHeader
        title="Events"
        lead={`${count(events.length, "record")} of the days chosen, ${aside} of them set aside and not counted in any rate. ${count(likely.length, "pair")} may be one event seen twice.`}
        asOf={asOf}
        actions={mayWrite ? <LinkButton href="/events/new">Record an event</LinkButton> : null}
      />
      <Section
        id="pairs"
        title="Perhaps one event seen twice"
        lead="Two registers, the same line, within three days, and nothing that both say differs. Until a person says so, both count."
      >
        <LikelyPairs pairs={likely} mayWrite={mayWrite} />
      </Section>
      {settled.length === 0 ? null : (
        <Section title="Settled by people">
          <SettledPairs pairs={settled} />
        </Section>
      )}
      <Section title="All records">
        <Tabs
          label="Days looked at"
          tabs={SPANS.map(({ days, label }) => ({
            ...{ label, href: `/events?days=${days}`, current: days === span.days },
          }))}
        />
        {cut ? <Notice kind="info">Only the newest are shown; choose fewer days.</Notice> : null}
        <AllEvents events={events} />
      </Section>
    </>
  );
}
