import { LinkButton } from "@/app/_ui/LinkButton";
import { Notice } from "@/app/_ui/Notice";
import { PageHeader } from "@/app/_ui/PageHeader";
import { Section } from "@/app/_ui/Section";
import { titled } from "@/app/_ui/titled";
import { AmountsHidden } from "@/app/(workspace)/_components/AmountsHidden";
import { SparesTabs } from "@/app/(workspace)/_components/SparesTabs";
import { BoardTable } from "@/app/(workspace)/pool/_components/BoardTable";
import { ShareKey } from "@/app/(workspace)/pool/_components/ShareKey";
import { SiteWorths } from "@/app/(workspace)/pool/_components/SiteWorths";
import { TransferList } from "@/app/(workspace)/pool/_components/TransferList";
import { signedInActor } from "@/lib/access/actor";
import { seesAmounts } from "@/lib/access/policy";
import { readAsOf } from "@/lib/data/asOf";
import { readPoolBoard } from "@/lib/data/poolBoard";
import { readSiteOwners } from "@/lib/data/siteNames";
import { readTransfers, readUnderWay } from "@/lib/data/transfers";
import { count } from "@/lib/view/number";
import { byUnevenness, siteWorths } from "@/lib/view/poolBoard";
import { HOARD_INDEX } from "@/lib/view/sparesShares";
import { waitsForReader } from "@/lib/view/transfer";

export const generateMetadata = titled("Pool board");

/** More sites than this do not fit across; the part's own page lists them all. */
const MOST_SITES_ACROSS = 10;

interface PoolPageProps {
  readonly searchParams: Promise<{ readonly asOf?: string | string[] }>;
}

export default async function PoolPage({ searchParams }: PoolPageProps) {
  const actor = await signedInActor({ amounts: "hidden" });
  const { asOf: asked } = await searchParams;
  const asOf = await readAsOf(actor, typeof asked === "string" ? asked : undefined);
  const [board, transfers, underWay, owners] = await Promise.all([
    readPoolBoard(actor, asOf),
    readTransfers(actor, null),
    readUnderWay(actor),
    readSiteOwners(actor),
  ]);
  const rows = board.pools.map((pool) => ({ ...pool, underWay: underWay.get(pool.partId) ?? 0 }));
  const amounts = seesAmounts(actor.grants);
  const waiting = waitsForReader(transfers);
  return (
    <>
      <PageHeader
        title="Pool board"
        asOf={asOf}
        lead="Who holds what share of the usable pieces against what share of the demand, and what would be better off elsewhere."
        actions={amounts ? <LinkButton href="/spend">Where to spend next</LinkButton> : null}
      />
      <SparesTabs current="/pool" />
      {amounts ? null : <AmountsHidden />}
      {board.seesAll ? null : <Notice kind="info">Your sites only; shares are of the whole group.</Notice>}
      <Section
        title="Transfers"
        id="transfers"
        lead={`The site that gives agrees and sends, the site that gets books them in. Pieces under way are on neither shelf and count for nobody.${waiting > 0 ? ` ${count(waiting, "transfer waits", "transfers wait")} for a step you may take.` : ""}`}
      >
        <TransferList transfers={transfers} />
      </Section>
      <Section
        title="Pools by site"
        id="board"
        lead={`Index = share of the usable pieces ÷ share of the expected removals. Above ${HOARD_INDEX} a site holds more than its demand explains. Open a part for the moves that save most.`}
      >
        <ShareKey />
        <BoardTable
          pools={byUnevenness(rows)}
          siteCodes={owners.size > MOST_SITES_ACROSS ? [] : [...owners.keys()]}
          showsPrices={amounts}
        />
      </Section>
      {amounts ? (
        <Section title="What the shelves are worth" id="worth">
          <SiteWorths worths={siteWorths(board.pools)} owners={owners} />
        </Section>
      ) : null}
    </>
  );
}
