import { Notice } from "@/app/_ui/Notice";
import { PageHeader } from "@/app/_ui/PageHeader";
import { Section } from "@/app/_ui/Section";
import { titled } from "@/app/_ui/titled";
import { CalendarFeed } from "@/app/(workspace)/account/_components/CalendarFeed";
import { ChangePassword } from "@/app/(workspace)/account/_components/ChangePassword";
import { Reading } from "@/app/(workspace)/account/_components/Reading";
import { ReportMail } from "@/app/(workspace)/account/_components/ReportMail";
import { SecondFactor } from "@/app/(workspace)/account/_components/SecondFactor";
import { Sessions } from "@/app/(workspace)/account/_components/Sessions";
import { WeeklyMail } from "@/app/(workspace)/account/_components/WeeklyMail";
import { owesSecondFactor, signedInActor } from "@/lib/access/actor";
import { hasPassword } from "@/lib/access/factorRule";
import { readCalendarFeed } from "@/lib/data/calendarFeed";
import { readDigest } from "@/lib/data/digest";
import { readZone } from "@/lib/data/readerZone";
import { readReading } from "@/lib/data/reading";
import { readReportWishes } from "@/lib/data/reportWish";
import { hasSecondFactor, readSessions } from "@/lib/data/sessions";
import { readSiteNames } from "@/lib/data/siteNames";
import { describeRoles } from "@/lib/view/role";

export const generateMetadata = titled("Your account");

export default async function AccountPage() {
  const actor = await signedInActor({ to: "everybody" });
  const owes = await owesSecondFactor();
  const siteNames = await readSiteNames(actor);
  const zone = await readZone(actor);
  const role = describeRoles(actor.grants, new Map(siteNames.map((site) => [site.id, site.code])));
  return (
    <>
      <PageHeader title={actor.name} lead={owes ? actor.email : `${actor.email}. ${role}.`} />
      {owes ? (
        <Notice kind="caution" title="Set up a second factor first">
          Your role asks for one. Begin below under “Second factor”; from then on everything opens that your
          role allows.
        </Notice>
      ) : null}
      <Section
        title="Language and numbers"
        lead="Words, days and numbers as you read them; names and numbers of your records stay as they were entered."
      >
        <Reading reading={await readReading(actor)} />
      </Section>
      <Section title="Change the password">
        <ChangePassword />
      </Section>
      <Section title="Second factor">
        <SecondFactor isOn={await hasSecondFactor(actor)} />
      </Section>
      <Section title="Where you are signed in" lead={`Times by the clock of ${zone}.`}>
        <Sessions
          sessions={await readSessions(actor)}
          zone={zone}
          asksPassword={await hasPassword(actor.userId)}
        />
      </Section>
      <Section
        title="Dates in your calendar"
        lead="Last orders, binding dates, project ends and shelves running empty, read by your own calendar program."
      >
        <CalendarFeed since={await readCalendarFeed(actor)} />
      </Section>
      <Section
        title="The week by mail"
        lead="What got worse at a site, orders to place within 30 days, and your late actions, on Monday morning by the clock of the site."
      >
        <WeeklyMail digest={await readDigest(actor)} sites={siteNames} zone={zone} />
      </Section>
      <Section
        title="Reports by mail"
        lead="Each time a report is given out, by a person or by the timetable, it comes to you with its PDF."
      >
        <ReportMail state={await readReportWishes(actor)} sites={siteNames} zone={zone} />
      </Section>
    </>
  );
}
