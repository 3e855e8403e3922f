import { notFound } from "next/navigation";
import { AmountsHidden } from "@/app/(workspace)/_components/AmountsHidden";
import { ReviewSheet } from "@/app/(workspace)/review/[id]/_components/ReviewSheet";
import { SheetBar } from "@/app/(workspace)/review/[id]/_components/SheetBar";
import "@/app/(workspace)/review/[id]/_components/sheet.css";
import { titled } from "@/app/_ui/titled";
import { signedInActor } from "@/lib/access/actor";
import { readClosedReview } from "@/lib/data/review";

export const generateMetadata = titled("Review held");

interface HeldReviewPageProps {
  readonly params: Promise<{ readonly id: string }>;
}

export default async function HeldReviewPage({ params }: HeldReviewPageProps) {
  const actor = await signedInActor({ amounts: "hidden" });
  const review = await readClosedReview(actor, (await params).id);
  if (!review) notFound();
  const { mark, record, showsAmounts } = review;
  return (
    <>
      <SheetBar reviewId={mark.id} siteCode={record.figures.siteCode} hasBuys={record.buys.length > 0} />
      {showsAmounts ? null : <AmountsHidden />}
      <ReviewSheet mark={mark} record={record} showsAmounts={showsAmounts} />
    </>
  );
}
