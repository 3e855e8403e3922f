import { PageHeader } from "@/app/_ui/PageHeader";
import { Section } from "@/app/_ui/Section";
import { titled } from "@/app/_ui/titled";
import { SparesTabs } from "@/app/(workspace)/_components/SparesTabs";
import { CountTable } from "@/app/(workspace)/counts/_components/CountTable";
import { OpenCount } from "@/app/(workspace)/counts/_components/OpenCount";
import { signedInActor } from "@/lib/access/actor";
import { mayAt } from "@/lib/access/policy";
import { readAsOf } from "@/lib/data/asOf";
import { readCounts } from "@/lib/data/count";
import { readSiteNames } from "@/lib/data/siteNames";
import { count } from "@/lib/view/number";

export const generateMetadata = titled("Counts");

export default async function CountsPage() {
  const actor = await signedInActor({ amounts: "hidden" });
  const [asOf, counts, sites] = await Promise.all([
    readAsOf(actor, undefined),
    readCounts(actor),
    readSiteNames(actor),
  ]);
  const own = sites.filter(({ id }) => mayAt(actor.grants, "stock:write", id));
  const open = counts.filter(({ postedOn }) => postedOn === null).length;
  return (
    <>
      <PageHeader
        title="Counts of the store"
        asOf={asOf}
        lead={`${count(open, "count is", "counts are")} under way. What is counted by hand is booked in one batch, after somebody looked at the differences.`}
      />
      <SparesTabs current="/counts" />
      <CountTable counts={counts} />
      {own.length === 0 ? null : (
        <Section
          title="Open a count"
          lead="The sheet takes every lot of the bins as it stands now. Whoever records events at the site may count; whoever changes its stock may post."
        >
          <OpenCount sites={own} />
        </Section>
      )}
    </>
  );
}
