import { Notice } from "@/app/_ui/Notice";
import { PageHeader } from "@/app/_ui/PageHeader";
import { Section } from "@/app/_ui/Section";
import { titled } from "@/app/_ui/titled";
import { SparesTabs } from "@/app/(workspace)/_components/SparesTabs";
import { FamilyShares } from "@/app/(workspace)/spares/_components/FamilyShares";
import { SparesTable } from "@/app/(workspace)/spares/_components/SparesTable";
import { signedInActor } from "@/lib/access/actor";
import { lookingBack } from "@/lib/access/lookingBack";
import { readAsOf } from "@/lib/data/asOf";
import { readSpares } from "@/lib/data/spares";
import { count } from "@/lib/view/number";
import { gotWorse, orderByWorse } from "@/lib/view/sparesMoves";
import { familyShares } from "@/lib/view/sparesShares";
import { day } from "@/lib/view/time";

export const generateMetadata = titled("Spares");

interface SparesPageProps {
  readonly searchParams: Promise<{ readonly asOf?: string | string[] }>;
}

async function SparesPage({ searchParams }: SparesPageProps) {
  const actor = await signedInActor({ amounts: "hidden" });
  const { asOf: asked } = await searchParams;
  const asOf = await readAsOf(actor, typeof asked === "string" ? asked : undefined);
  const look = await readSpares(actor, asOf);
  const worse = look.pools.filter(gotWorse).length;
  const overdue = look.pools.reduce((sum, pool) => sum + pool.repairsOverdue, 0);
  return (
    <>
      <PageHeader
        title="Spares, weekly look"
        asOf={asOf}
        lead={`${count(worse, "pool")} of ${look.pools.length} got worse since ${day(look.before)}; ${count(overdue, "repair is", "repairs are")} overdue${look.seesAll ? "" : " at your sites"}.`}
      />
      <SparesTabs current="/spares" />
      <Section title="What got worse" id="worse">
        <Notice kind="info">
          {look.ownShelf
            ? `Compared with the records as they stood when ${day(look.before)} ended: its shelf, supply dates and removals.`
            : `Compared with ${day(look.before)}: the supply dates and removals known on that day. How the shelf stood then is not known, so both days use one shelf, and pieces taken or returned in the week do not show as a change.`}
        </Notice>
        <SparesTable pools={orderByWorse(look.pools)} />
      </Section>
      <Section
        title="Where the spares lie"
        id="held-share"
        lead="Share of the spares on the books ÷ share of the expected removals, family by family. Above 1.5 a site holds more than its demand explains; check sizes and revisions before anything is shipped."
      >
        <FamilyShares shares={familyShares(look.pools)} />
      </Section>
    </>
  );
}

export default lookingBack(SparesPage);
