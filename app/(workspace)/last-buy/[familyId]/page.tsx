import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { Breadcrumbs } from "@/app/_ui/Breadcrumbs";
import { Notice } from "@/app/_ui/Notice";
import { PageHeader } from "@/app/_ui/PageHeader";
import { BuyCases } from "@/app/(workspace)/last-buy/[familyId]/_components/BuyCases";
import { BuyHead } from "@/app/(workspace)/last-buy/[familyId]/_components/BuyHead";
import { BuySteps } from "@/app/(workspace)/last-buy/[familyId]/_components/BuySteps";
import { BuyTerms } from "@/app/(workspace)/last-buy/[familyId]/_components/BuyTerms";
import { signedInActor } from "@/lib/access/actor";
import { readAsOf } from "@/lib/data/asOf";
import { readLastBuy } from "@/lib/data/lastBuy";
import { buyCases, lastBuySheet } from "@/lib/view/lastBuySheet";

interface LastBuyPageProps {
  readonly params: Promise<{ readonly familyId: string }>;
  readonly searchParams: Promise<{ readonly asOf?: string }>;
}

export const metadata: Metadata = { title: "How many to buy" };

export default async function LastBuyPage({ params, searchParams }: LastBuyPageProps) {
  const actor = await signedInActor();
  const asOf = await readAsOf(actor, (await searchParams).asOf);
  const input = await readLastBuy(actor, { familyId: (await params).familyId, asOf });
  if (!input) notFound();
  const sheet = lastBuySheet(input);
  const cases = buyCases(sheet);
  return (
    <>
      <PageHeader
        title={`How many ${input.family.name} to buy`}
        lead={`The last chance to order ${input.family.name} of ${input.family.maker}: what the units in service need until they leave, less what is on the shelf.`}
        asOf={asOf}
        above={<Breadcrumbs crumbs={[{ label: "Parts", href: "/parts" }]} />}
      />
      {input.everySite ? null : (
        <Notice kind="info">Your sites only. Other sites may hold or need units of the same parts.</Notice>
      )}
      <BuyHead input={input} sheet={sheet} cases={cases} />
      <BuyCases cases={cases} parts={input.parts} />
      <BuySteps input={input} sheet={sheet} cases={cases} />
      <BuyTerms sheet={sheet} />
    </>
  );
}
