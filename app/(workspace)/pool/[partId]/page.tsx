import { notFound } from "next/navigation";
import { Breadcrumbs } from "@/app/_ui/Breadcrumbs";
import { LinkButton } from "@/app/_ui/LinkButton";
import { Notice } from "@/app/_ui/Notice";
import { PageHeader } from "@/app/_ui/PageHeader";
import { Section } from "@/app/_ui/Section";
import { titled } from "@/app/_ui/titled";
import { AmountsHidden } from "@/app/(workspace)/_components/AmountsHidden";
import { ShareKey } from "@/app/(workspace)/pool/_components/ShareKey";
import { TransferList } from "@/app/(workspace)/pool/_components/TransferList";
import { Method } from "@/app/(workspace)/pool/[partId]/_components/Method";
import { MoveTable } from "@/app/(workspace)/pool/[partId]/_components/MoveTable";
import { SharesTable } from "@/app/(workspace)/pool/[partId]/_components/SharesTable";
import { Staying } from "@/app/(workspace)/pool/[partId]/_components/Staying";
import { TermsForm } from "@/app/(workspace)/pool/[partId]/_components/TermsForm";
import { signedInActor } from "@/lib/access/actor";
import { seesAmounts } from "@/lib/access/policy";
import { readAsOf } from "@/lib/data/asOf";
import { readPoolOfPart } from "@/lib/data/poolOfPart";
import { readTransfers } from "@/lib/data/transfers";
import { percent } from "@/lib/view/chance";
import { count, quantity } from "@/lib/view/number";
import { readTransferTerms } from "@/lib/view/poolMoves";

export const generateMetadata = titled("Pool of a part");

const OWN_CHANCE = "Own chance: mean chance over a year that a failure finds the site's own shelf empty.";
const WAY_LOSS = "Way loss: what that would cost a year were it always so and another site had one.";

interface PoolPartPageProps {
  readonly params: Promise<{ readonly partId: string }>;
  readonly searchParams: Promise<Record<string, string | string[] | undefined>>;
}

export default async function PoolPartPage({ params, searchParams }: PoolPartPageProps) {
  const actor = await signedInActor({ amounts: "hidden" });
  const asked = await searchParams;
  const asOf = await readAsOf(actor, typeof asked.asOf === "string" ? asked.asOf : undefined);
  const { terms, unreadable } = readTransferTerms(asked);
  const { partId: id } = await params;
  const [pool, transfers] = await Promise.all([
    readPoolOfPart(actor, { id, asOf, ...terms }),
    readTransfers(actor, id),
  ]);
  if (!pool) notFound();
  const amounts = seesAmounts(actor.grants);
  return (
    <>
      <PageHeader
        title={`Pool of ${pool.number}`}
        asOf={asOf}
        above={<Breadcrumbs crumbs={[{ label: "Pool board", href: "/pool" }]} />}
        lead={`${pool.description} by ${pool.maker}: ${quantity(pool.usable)} usable for ${count(pool.installed, "unit")} in the group; chance over the next year that no site has one ${percent(pool.groupNoSpare)}.`}
        actions={<LinkButton href={`/parts/${pool.partId}`}>All of the part</LinkButton>}
      />
      {amounts ? null : <AmountsHidden />}
      {pool.everySite ? null : (
        <Notice kind="info">
          Your sites only: moves to and from other sites are not looked for here. Ask the group&apos;s spares
          planner.
        </Notice>
      )}
      <Section
        title="What would be better off elsewhere"
        id="moves"
        lead="One usable piece at a time, each time the move after which the group is expected to lose least, while the giving site stays within its target."
      >
        <TermsForm {...{ terms, unreadable, asOf }} partId={pool.partId} asksLeast={amounts} />
        <MoveTable pool={pool} showsAmounts={amounts} />
        <Staying lots={pool.staying} />
      </Section>
      <Section title="Who holds what" id="shares" lead={amounts ? `${OWN_CHANCE} ${WAY_LOSS}` : OWN_CHANCE}>
        <ShareKey />
        <SharesTable pool={pool} showsAmounts={amounts} />
        <Method pool={pool} showsAmounts={amounts} />
      </Section>
      <Section title="Transfers of this part" id="transfers">
        <TransferList transfers={transfers} />
      </Section>
    </>
  );
}
