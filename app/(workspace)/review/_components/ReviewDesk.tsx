"use client";

import { UndoBar } from "@/app/_ui/UndoBar";
import { useRowKeys } from "@/app/_ui/useRowKeys";
import { useDone } from "@/app/(workspace)/_components/useDone";
import { ActionSection } from "@/app/(workspace)/review/_components/ActionSection";
import { BuySection } from "@/app/(workspace)/review/_components/BuySection";
import { DateSection } from "@/app/(workspace)/review/_components/DateSection";
import type { Board, Desk } from "@/app/(workspace)/review/_components/desk";
import { NoteSection } from "@/app/(workspace)/review/_components/NoteSection";
import { ReviewState } from "@/app/(workspace)/review/_components/ReviewState";
import { ShelfSection } from "@/app/(workspace)/review/_components/ShelfSection";
import { WorseSection } from "@/app/(workspace)/review/_components/WorseSection";
import { addDays } from "@/lib/kernel/isoDate";

const DUE_IN_DAYS = 7;

interface ReviewDeskProps {
  readonly board: Board;
  /** Who looks at it. */
  readonly me: string;
  /** A look at another day can be read and not written. */
  readonly isToday: boolean;
  readonly mayReview: boolean;
  readonly mayAct: boolean;
}

/** The meeting's table: what got worse, what is due, who does what, what is bought, what was said. */
export function ReviewDesk({ board, me, isToday, mayReview, mayAct }: ReviewDeskProps) {
  const { done, tell, undo, close } = useDone();
  useRowKeys();
  const { site, open, owners, parts, lines, figures } = board;
  const desk: Desk = {
    ...{ site, owners, parts, lines, me, mayAct, tell },
    asOf: figures.asOf,
    dueOn: addDays(figures.asOf, DUE_IN_DAYS),
    reviewId: mayReview && open ? open.id : null,
    listed: new Set(board.buys.map(({ partId }) => partId)),
    showsAmounts: board.showsAmounts,
  };
  return (
    <>
      <ReviewState {...{ board, isToday, mayReview, tell }} />
      <WorseSection desk={desk} figures={figures} />
      <DateSection desk={desk} figures={figures} />
      <ShelfSection desk={desk} figures={figures} />
      <ActionSection desk={desk} actions={board.actions} />
      <BuySection desk={desk} buys={board.buys} open={open} />
      <NoteSection key={open?.id ?? "none"} desk={desk} notes={board.notes} isOpen={open !== null} />
      <UndoBar message={done?.message ?? null} {...(done?.undo ? { onUndo: undo } : {})} onClose={close} />
    </>
  );
}
