import { PageHeader } from "@/app/_ui/PageHeader";
import { Section } from "@/app/_ui/Section";
import { titled } from "@/app/_ui/titled";
import { FactorRule } from "@/app/(workspace)/people/_components/FactorRule";
import { InvitationTable } from "@/app/(workspace)/people/_components/InvitationTable";
import { NotYours } from "@/app/(workspace)/people/_components/NotYours";
import { PeopleTable } from "@/app/(workspace)/people/_components/PeopleTable";
import { RoleGuide } from "@/app/(workspace)/people/_components/RoleGuide";
import { signedInActor } from "@/lib/access/actor";
import { scopeOf } from "@/lib/access/policy";
import { readAsOf } from "@/lib/data/asOf";
import { readRequiredFactor } from "@/lib/data/factorRule";
import { readInvitations } from "@/lib/data/invitations";
import { readPeople } from "@/lib/data/people";
import { readProjectNames } from "@/lib/data/projectNames";
import { readSiteNames } from "@/lib/data/siteNames";
import { count } from "@/lib/view/number";

export const generateMetadata = titled("People");

interface PeoplePageProps {
  readonly searchParams: Promise<{ readonly asOf?: string }>;
}

export default async function PeoplePage({ searchParams }: PeoplePageProps) {
  const actor = await signedInActor({ amounts: "hidden" });
  if (scopeOf(actor.grants, "people:write") !== "all") return <NotYours />;
  const [asOf, people, sites, projects, invitations, required] = await Promise.all([
    readAsOf(actor, (await searchParams).asOf),
    readPeople(actor),
    readSiteNames(actor),
    readProjectNames(actor),
    readInvitations(actor),
    readRequiredFactor(actor),
  ]);
  const open = people.filter((person) => !person.closed).length;
  return (
    <>
      <PageHeader
        title="People"
        lead={`${count(open, "person", "people")} can sign in. Accounts have no past: this is how they stand now, whatever the day looked at.`}
        asOf={asOf}
      />
      <Section title="Accounts">
        <PeopleTable {...{ people, sites, projects }} ownId={actor.userId} />
      </Section>
      <Section
        title="Invitations and new passwords"
        lead="A link opens once. It is told when it is made and kept nowhere; a mail carries it where a mail server is set."
      >
        <InvitationTable {...{ invitations, sites, projects }} />
      </Section>
      <Section
        title="Second factor"
        lead="Whose role is ticked and who signs in by a password sets up a second factor at the next step they take; until then nothing opens but their account page."
      >
        <FactorRule key={required.join()} required={required} />
      </Section>
      <Section
        title="What each role may do"
        lead="A role holds at all sites or at those named. Somebody with several roles may do what any of them allows."
      >
        <RoleGuide />
      </Section>
    </>
  );
}
