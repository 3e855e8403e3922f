"use client";

import { useRouter } from "next/navigation";
import { useTransition } from "react";
import { Button } from "@/app/_ui/Button";
import { Notice } from "@/app/_ui/Notice";
import type { Done } from "@/app/(workspace)/_components/useDone";
import type { Board } from "@/app/(workspace)/review/_components/desk";
import { unsavedTopics } from "@/app/(workspace)/review/_components/noteDraft";
import { closeThisReview, dropThisReview, openThisReview } from "@/app/(workspace)/review/actions";
import { day } from "@/lib/view/time";

interface ReviewStateProps {
  readonly board: Board;
  readonly isToday: boolean;
  readonly mayReview: boolean;
  readonly tell: (done: Done) => void;
}

/** Whether a review is open, and the way to open or close it. */
export function ReviewState({ board, isToday, mayReview, tell }: ReviewStateProps) {
  if (!isToday) return <Notice kind="info">A look at another day: nothing can be written here.</Notice>;
  const { open, site, figures } = board;
  return (
    <div className="no-print mb-6 flex flex-wrap items-center justify-between gap-x-6 gap-y-2">
      <p>
        {open === null
          ? "No review is open at this site."
          : `Open since ${day(open.heldOn)}, by ${open.openedBy}. Closing keeps all that is shown, as of ${day(figures.asOf)}.`}{" "}
        <span className="text-ink-2">
          Keys: j and k walk the rows, Enter opens one, a adds an action, b buys, / searches.
        </span>
      </p>
      {!mayReview ? null : open === null ? (
        <Open siteId={site.id} tell={tell} />
      ) : (
        <Close reviewId={open.id} dataVersion={board.dataVersion} tell={tell} />
      )}
    </div>
  );
}

function Open({ siteId, tell }: { readonly siteId: string; readonly tell: (done: Done) => void }) {
  const [pending, start] = useTransition();
  const open = () =>
    start(async () => {
      const answer = await openThisReview({ siteId });
      tell(
        answer.ok
          ? { message: "Review opened.", undo: () => dropThisReview(answer.value) }
          : { message: answer.error.reason },
      );
    });
  return (
    <Button kind="primary" disabled={pending} onClick={open}>
      {pending ? "Opening…" : "Open the review"}
    </Button>
  );
}

interface CloseProps {
  readonly reviewId: string;
  readonly dataVersion: number;
  readonly tell: (done: Done) => void;
}

function Close({ reviewId, dataVersion, tell }: CloseProps) {
  const router = useRouter();
  const [pending, start] = useTransition();
  const close = () =>
    start(async () => {
      const [unsaved] = await unsavedTopics(reviewId);
      if (unsaved !== undefined)
        return tell({
          message: `Not closed: what you typed under "${unsaved}" is not saved yet. It is kept on this device.`,
        });
      const answer = await closeThisReview({ reviewId, dataVersion });
      if (answer.ok) router.push(`/review/${answer.value.reviewId}`);
      else tell({ message: answer.error.reason });
    });
  return (
    <Button kind="primary" disabled={pending} onClick={close}>
      {pending ? "Closing…" : "Close the review"}
    </Button>
  );
}
