import { KeyFigure } from "@/app/_ui/KeyFigure";
import { KeyFigures } from "@/app/_ui/KeyFigures";
import { PageHeader } from "@/app/_ui/PageHeader";
import { Section } from "@/app/_ui/Section";
import { titled } from "@/app/_ui/titled";
import { AmountsHidden } from "@/app/(workspace)/_components/AmountsHidden";
import { SparesTabs } from "@/app/(workspace)/_components/SparesTabs";
import { BackTable } from "@/app/(workspace)/repairs/_components/BackTable";
import { OutTable } from "@/app/(workspace)/repairs/_components/OutTable";
import { RecordTable } from "@/app/(workspace)/repairs/_components/RecordTable";
import { SendOut } from "@/app/(workspace)/repairs/_components/SendOut";
import { signedInActor } from "@/lib/access/actor";
import { mayAt, maySomewhere, seesAmounts } from "@/lib/access/policy";
import { readAsOf } from "@/lib/data/asOf";
import { readRepairs, readSendableLots } from "@/lib/data/repairs";
import { readSiteNames } from "@/lib/data/siteNames";
import { repairRecords, soonAgain } from "@/lib/spares/repairRecord";
import { count, plainNumber } from "@/lib/view/number";
import { backBy, outOn, SOON_DAYS } from "@/lib/view/repair";
import { day } from "@/lib/view/time";

export const generateMetadata = titled("Repairs");

interface RepairsPageProps {
  readonly searchParams: Promise<{ readonly asOf?: string | string[] }>;
}

export default async function RepairsPage({ searchParams }: RepairsPageProps) {
  const actor = await signedInActor({ amounts: "hidden" });
  const { asOf: asked } = await searchParams;
  const [asOf, today] = await Promise.all([
    readAsOf(actor, typeof asked === "string" ? asked : undefined),
    readAsOf(actor, undefined),
  ]);
  const [orders, lots, sites] = await Promise.all([
    readRepairs(actor),
    readSendableLots(actor),
    readSiteNames(actor),
  ]);
  const out = outOn(orders, asOf);
  const overdue = out.filter(({ daysOverdue }) => (daysOverdue ?? 0) > 0);
  const known = orders.filter(({ sentOn }) => sentOn <= asOf);
  const again = soonAgain(known, SOON_DAYS);
  const own = sites.filter(({ id }) => mayAt(actor.grants, "stock:write", id));
  return (
    <>
      <PageHeader
        title="Repairs"
        asOf={asOf}
        lead={`${count(out.length, "unit is", "units are")} out, ${plainNumber(overdue.length)} overdue. A unit that is overdue is counted on later, so the cover of its part falls until it is back or promised anew.`}
      />
      <SparesTabs current="/repairs" />
      {seesAmounts(actor.grants) ? null : <AmountsHidden />}
      <KeyFigures>
        <KeyFigure label="Out for repair" value={plainNumber(out.length)} unit="units" date={day(asOf)} />
        <KeyFigure label="Overdue" value={plainNumber(overdue.length)} unit="units" date={day(asOf)} />
        <KeyFigure
          label={`Sent again within ${SOON_DAYS} days`}
          value={plainNumber(again.size)}
          unit="units"
          date="all on record; own choice of days"
        />
      </KeyFigures>
      <Section title="Out for repair" id="out" lead="The longest overdue first, then what is out longest.">
        <OutTable orders={out} again={Object.fromEntries(again)} today={today} />
      </Section>
      {own.length === 0 ? null : (
        <Section title="Send a unit out" id="send">
          <SendOut sites={own} lots={lots} today={today} />
        </Section>
      )}
      <Section
        title="How the repairers do"
        id="repairers"
        lead="By part and repairer, of all trips on record. Shares with the range they may truly have (90 %, Wilson); days from sending to return as counted. Trips still under way count as out and in nothing else."
      >
        <RecordTable records={repairRecords(known, SOON_DAYS)} orders={known} />
      </Section>
      <Section title="Came back" id="back">
        <BackTable
          orders={backBy(orders, asOf)}
          again={Object.fromEntries(again)}
          showsCost={maySomewhere(actor.grants, "money:read")}
        />
      </Section>
    </>
  );
}
