import { Dialog } from "@/app/_ui/Dialog";
import { ActionForm } from "@/app/(workspace)/review/_components/ActionForm";
import { BuyForm } from "@/app/(workspace)/review/_components/BuyForm";
import type { About, Desk } from "@/app/(workspace)/review/_components/desk";

interface RowButtonsProps {
  readonly desk: Desk;
  readonly about: About;
  /** What the row is of, to tell its buttons apart. */
  readonly name: string;
  /** Why its part would be bought. */
  readonly reason: string;
}

/** What a row can lead to: an action (key a), and where it is of a part, a purchase (key b). */
export function RowButtons({ desk, about, name, reason }: RowButtonsProps) {
  const { partId } = about;
  const { reviewId } = desk;
  return (
    <td className="no-print">
      <div className="flex flex-wrap gap-2">
        {desk.mayAct ? (
          <span data-key="a">
            <Dialog trigger="Add action" title={`Action about ${name}`}>
              {(close) => <ActionForm desk={desk} about={about} onDone={close} />}
            </Dialog>
          </span>
        ) : null}
        {partId !== null && reviewId !== null && !desk.listed.has(partId) ? (
          <span data-key="b">
            <Dialog trigger="Buy" title={`Buy ${name}`}>
              {(close) => (
                <BuyForm desk={desk} reviewId={reviewId} partId={partId} reason={reason} onDone={close} />
              )}
            </Dialog>
          </span>
        ) : null}
      </div>
    </td>
  );
}
