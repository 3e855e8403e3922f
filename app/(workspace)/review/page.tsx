import { notFound } from "next/navigation";
import { EmptyState } from "@/app/_ui/EmptyState";
import { LinkButton } from "@/app/_ui/LinkButton";
import { PageHeader } from "@/app/_ui/PageHeader";
import { titled } from "@/app/_ui/titled";
import { AmountsHidden } from "@/app/(workspace)/_components/AmountsHidden";
import { SparesTabs } from "@/app/(workspace)/_components/SparesTabs";
import { PastReviews } from "@/app/(workspace)/review/_components/PastReviews";
import { ReviewDesk } from "@/app/(workspace)/review/_components/ReviewDesk";
import { SiteChoice } from "@/app/(workspace)/review/_components/SiteChoice";
import { signedInActor } from "@/lib/access/actor";
import { readAsOf } from "@/lib/data/asOf";
import { readReviewBoard } from "@/lib/data/review";
import { reviewLead } from "@/lib/view/reviewWords";

export const generateMetadata = titled("Weekly review");

interface ReviewPageProps {
  readonly searchParams: Promise<Readonly<Partial<Record<"asOf" | "site", string | string[]>>>>;
}

const one = (value: string | string[] | undefined) => (typeof value === "string" ? value : undefined);

export default async function ReviewPage({ searchParams }: ReviewPageProps) {
  const actor = await signedInActor({ amounts: "hidden" });
  const asked = await searchParams;
  const siteCode = one(asked.site) ?? null;
  const [asOf, today] = await Promise.all([readAsOf(actor, one(asked.asOf)), readAsOf(actor, undefined)]);
  const board = await readReviewBoard(actor, { siteCode, asOf });
  if (!board) return siteCode === null ? <NoSite asOf={asOf} /> : notFound();
  const { sites, past, mayReview, mayAct, ...shown } = board;
  return (
    <>
      <PageHeader
        title={`Weekly review of ${board.site.code} ${board.site.name}`}
        asOf={asOf}
        lead={reviewLead(board, asOf)}
      />
      <SparesTabs current="/review" />
      <SiteChoice sites={sites} chosen={board.site.code} />
      {board.showsAmounts ? null : <AmountsHidden />}
      <ReviewDesk
        board={shown}
        me={actor.userId}
        isToday={asOf === today}
        mayReview={mayReview && asOf === today}
        mayAct={mayAct && asOf === today}
      />
      <PastReviews past={past} />
    </>
  );
}

function NoSite({ asOf }: { readonly asOf: string }) {
  return (
    <>
      <PageHeader title="Weekly review" asOf={asOf} />
      <EmptyState
        title="No site to review yet"
        actions={<LinkButton href="/import">Load registers</LinkButton>}
      >
        The review tells what got worse at a site since it was last held. It stands here as soon as there is
        one.
      </EmptyState>
    </>
  );
}
