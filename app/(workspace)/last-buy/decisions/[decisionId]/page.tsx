import { notFound } from "next/navigation";
import { AsOfLink } from "@/app/_ui/AsOfLink";
import { Breadcrumbs } from "@/app/_ui/Breadcrumbs";
import { Notice } from "@/app/_ui/Notice";
import { PageHeader } from "@/app/_ui/PageHeader";
import { titled } from "@/app/_ui/titled";
import { BuyCases } from "@/app/(workspace)/last-buy/_components/BuyCases";
import { BuyReasons } from "@/app/(workspace)/last-buy/_components/BuyReasons";
import { BuySteps } from "@/app/(workspace)/last-buy/_components/BuySteps";
import { BuyTerms } from "@/app/(workspace)/last-buy/_components/BuyTerms";
import { DecisionFacts } from "@/app/(workspace)/last-buy/decisions/[decisionId]/_components/DecisionFacts";
import { DecisionTable } from "@/app/(workspace)/last-buy/decisions/[decisionId]/_components/DecisionTable";
import { signedInActor } from "@/lib/access/actor";
import { readBuyDecision } from "@/lib/data/buyDecision";
import { count } from "@/lib/view/number";

interface DecisionPageProps {
  readonly params: Promise<{ readonly decisionId: string }>;
}

export const generateMetadata = titled("Decision to buy");

export default async function DecisionPage({ params }: DecisionPageProps) {
  const kept = await readBuyDecision(await signedInActor(), (await params).decisionId);
  if (!kept) notFound();
  const { sheet, intact, supersededById } = kept;
  const { family, asOf } = sheet.document;
  return (
    <>
      <PageHeader
        title={`Decision: ${count(sheet.quantity, `${family.name} unit`)}`}
        lead={`How many ${family.name} of ${family.maker} to buy at the last chance, as it was decided. Nothing on this page is worked out again.`}
        asOf={asOf}
        above={<Breadcrumbs crumbs={[{ label: "How many to buy", href: `/last-buy/${family.id}` }]} />}
      />
      {intact ? null : (
        <Notice kind="problem">
          The text of this decision no longer has the hash it was kept with. Do not rely on it.
        </Notice>
      )}
      {supersededById === null ? null : (
        <Notice kind="info" title="A later decision took its place">
          <AsOfLink href={`/last-buy/decisions/${supersededById}`}>Open the later one</AsOfLink>
        </Notice>
      )}
      <DecisionFacts kept={kept} />
      <DecisionTable sheet={sheet} />
      <BuyReasons document={sheet.document} />
      <BuyCases document={sheet.document} />
      <BuySteps document={sheet.document} />
      <BuyTerms document={sheet.document} />
    </>
  );
}
