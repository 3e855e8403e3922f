import { notFound } from "next/navigation";
import { Breadcrumbs } from "@/app/_ui/Breadcrumbs";
import { Notice } from "@/app/_ui/Notice";
import { PageHeader } from "@/app/_ui/PageHeader";
import { titled } from "@/app/_ui/titled";
import { BuySheetView } from "@/app/(workspace)/last-buy/[familyId]/_components/BuySheetView";
import { DecisionList } from "@/app/(workspace)/last-buy/[familyId]/_components/DecisionList";
import { signedInActor } from "@/lib/access/actor";
import { maySomewhere } from "@/lib/access/policy";
import { readAsOf } from "@/lib/data/asOf";
import { readBuyDecisions } from "@/lib/data/buyDecision";
import { readBuySheet } from "@/lib/data/buySheet";

interface LastBuyPageProps {
  readonly params: Promise<{ readonly familyId: string }>;
  readonly searchParams: Promise<{ readonly asOf?: string }>;
}

export const generateMetadata = titled("How many to buy");

export default async function LastBuyPage({ params, searchParams }: LastBuyPageProps) {
  const actor = await signedInActor();
  const { familyId } = await params;
  const [asOf, today] = [await readAsOf(actor, (await searchParams).asOf), await readAsOf(actor, undefined)];
  const read = await readBuySheet(actor, { familyId, asOf });
  if (!read) notFound();
  const { basis, lastBatch } = read;
  const decisions = await readBuyDecisions(actor, familyId);
  const { family } = basis;
  return (
    <>
      <PageHeader
        title={`How many ${family.name} to buy`}
        lead={`The last chance to order ${family.name} of ${family.maker}: what the units in service need until they leave, less what is on the shelf.`}
        asOf={asOf}
        above={
          <Breadcrumbs
            crumbs={[
              { label: "Parts", href: "/parts" },
              { label: "Notices", href: "/notices" },
            ]}
          />
        }
      />
      {basis.everySite ? null : (
        <Notice kind="info">Your sites only. Other sites may hold or need units of the same parts.</Notice>
      )}
      <DecisionList decisions={decisions} />
      <BuySheetView
        basis={basis}
        lastBatch={lastBatch}
        standing={decisions.find(({ stands }) => stands)?.id ?? null}
        // A decision is taken on today's figures.
        mayDecide={asOf === today && maySomewhere(actor.grants, "stock:write")}
      />
    </>
  );
}
