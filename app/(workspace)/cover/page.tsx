import { LinkButton } from "@/app/_ui/LinkButton";
import { PageHeader } from "@/app/_ui/PageHeader";
import { Section } from "@/app/_ui/Section";
import { titled } from "@/app/_ui/titled";
import { AmountsHidden } from "@/app/(workspace)/_components/AmountsHidden";
import { SparesTabs } from "@/app/(workspace)/_components/SparesTabs";
import { LadderTable } from "@/app/(workspace)/cover/_components/LadderTable";
import { signedInActor } from "@/lib/access/actor";
import { lookingBack } from "@/lib/access/lookingBack";
import { seesAmounts } from "@/lib/access/policy";
import { readAsOf } from "@/lib/data/asOf";
import { readCoverLadders } from "@/lib/data/coverLadder";
import { cheapBlockersFirst, coverRow, emptySoonestFirst } from "@/lib/view/coverLadder";
import { count } from "@/lib/view/number";

export const generateMetadata = titled("Cover ladder");

interface CoverPageProps {
  readonly searchParams: Promise<{ readonly asOf?: string | string[] }>;
}

async function CoverPage({ searchParams }: CoverPageProps) {
  const actor = await signedInActor({ amounts: "hidden" });
  const { asOf: asked } = await searchParams;
  const asOf = await readAsOf(actor, typeof asked === "string" ? asked : undefined);
  const amounts = seesAmounts(actor.grants);
  const found = await readCoverLadders(actor, asOf);
  const ladders = amounts ? cheapBlockersFirst(found) : emptySoonestFirst(found);
  const soon = ladders.filter(({ days }) => days.p80 !== null).length;
  const unpriced = ladders.filter(({ priceEuro }) => priceEuro === null).length;
  return (
    <>
      <PageHeader
        title="Cover ladder"
        asOf={asOf}
        lead={`How long the spares of each part last: ${count(soon, "part is", "parts are")} likely to run dry within the years computed, of ${ladders.length} installed. ${amounts ? "Cheap blockers stand" : "What is empty soonest stands"} first.`}
        actions={amounts ? <LinkButton href="/spend">Where to spend next</LinkButton> : null}
      />
      <SparesTabs current="/cover" />
      {amounts ? null : <AmountsHidden />}
      <Section
        title={amounts ? "Cheap blockers first" : "Empty soonest first"}
        id="ladder"
        lead={
          amounts
            ? `Loss per price = money lost a year for want of a spare, on the lines you may see, ÷ the price of one piece. A card at 85 can stop as much as a drive at 4 700. ${count(unpriced, "part has", "parts have")} no price: those stand after the rest by their loss, and are not cheap or dear.`
            : "By the day the shelf is likely empty (P80), then by the chance of no spare."
        }
      >
        <LadderTable ladders={ladders.map(coverRow)} asOf={asOf} showsAmounts={amounts} />
      </Section>
      <p className="measure mt-3 text-ink-2 text-sm">
        Exit gap = the day the shelf is likely empty (P80) less the day the last unit leaves by a planned
        removal: below zero, units still run after the spares are gone. Pieces from repair and planned
        removals count from their day on, times the chance that they work. Whether a part stands at an end of
        supply says its badge; a price on record does not mean it can be had.
      </p>
    </>
  );
}

export default lookingBack(CoverPage);
