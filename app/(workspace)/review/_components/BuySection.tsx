"use client";

import { useState, useTransition } from "react";
import { AsOfLink } from "@/app/_ui/AsOfLink";
import { Button } from "@/app/_ui/Button";
import { Dialog } from "@/app/_ui/Dialog";
import { LinkButton } from "@/app/_ui/LinkButton";
import { RowTable } from "@/app/_ui/RowTable";
import { Section } from "@/app/_ui/Section";
import { BuyForm } from "@/app/(workspace)/review/_components/BuyForm";
import type { Desk } from "@/app/(workspace)/review/_components/desk";
import { addABuy, removeThisBuy } from "@/app/(workspace)/review/actions";
import { buyTotals, shownBuy } from "@/lib/view/reviewBuys";
import type { ReviewBuy, ReviewMark } from "@/lib/view/reviewRecord";

interface BuySectionProps {
  readonly desk: Desk;
  readonly buys: readonly ReviewBuy[];
  readonly open: ReviewMark | null;
}

/** What is to be bought, to be taken along as a file. */
export function BuySection({ desk, buys, open }: BuySectionProps) {
  const { reviewId } = desk;
  const [left, setLeft] = useState<ReadonlySet<string>>(new Set());
  if (open === null) return null;
  const chosen = buys.filter(({ id }) => !left.has(id));
  const turn = (id: string) =>
    setLeft((now) => new Set(now.has(id) ? [...now].filter((one) => one !== id) : [...now, id]));
  return (
    <Section
      title="Purchase list"
      id="purchases"
      lead={
        desk.showsAmounts
          ? "Prices are the last on record, in their own currency and of their own day; they are no quotation."
          : "What is to be bought, to be taken along as a file."
      }
      actions={
        reviewId === null ? null : (
          <Dialog trigger="Add a part" title="Add a part to the purchase list">
            {(close) => <BuyForm desk={desk} reviewId={reviewId} partId={null} reason="" onDone={close} />}
          </Dialog>
        )
      }
    >
      {buys.length === 0 ? (
        <p>Nothing is to be bought so far. Put a part here from its row with the key b.</p>
      ) : (
        <>
          <RowTable
            caption="Purchase list"
            heads={[
              "Part",
              { text: "In the file", print: false },
              { text: "Quantity, pieces", end: true },
              "Why",
              "Order by",
              "Supply stage",
              ...(desk.showsAmounts ? [{ text: "Price of a piece", end: true }, "Price of"] : []),
              { text: "Change", print: false },
            ]}
          >
            {buys.map((buy) => (
              <Row
                key={buy.id}
                {...{ buy, desk, reviewId }}
                taken={!left.has(buy.id)}
                turn={() => turn(buy.id)}
              />
            ))}
          </RowTable>
          {desk.showsAmounts ? <p className="mt-2">{buyTotals(chosen)}</p> : null}
          {chosen.length === 0 ? null : <Files reviewId={open.id} chosen={chosen} isAll={left.size === 0} />}
        </>
      )}
    </Section>
  );
}

interface FilesProps {
  readonly reviewId: string;
  readonly chosen: readonly ReviewBuy[];
  readonly isAll: boolean;
}

/** The chosen rows as files. */
function Files({ reviewId, chosen, isAll }: FilesProps) {
  const rows = isAll ? "" : `&rows=${chosen.map(({ id }) => id).join(",")}`;
  return (
    <div className="no-print mt-3 flex flex-wrap gap-2">
      <LinkButton href={`/api/review/${reviewId}?as=csv${rows}`} download>
        Purchase list as CSV
      </LinkButton>
      <LinkButton href={`/api/review/${reviewId}?as=xlsx${rows}`} download>
        Purchase list as XLSX
      </LinkButton>
    </div>
  );
}

interface RowProps {
  readonly buy: ReviewBuy;
  readonly desk: Desk;
  readonly reviewId: string | null;
  readonly taken: boolean;
  readonly turn: () => void;
}

function Row({ buy, desk, reviewId, taken, turn }: RowProps) {
  const cells = shownBuy(buy);
  return (
    <tr>
      <th scope="row">
        <AsOfLink href={`/parts/${buy.partId}`} className="row-link" data-row-link="">
          {buy.number}
        </AsOfLink>
        <span className="block text-ink-2 text-sm">{buy.description}</span>
      </th>
      <td className="no-print">
        <input
          type="checkbox"
          className="tick"
          checked={taken}
          onChange={turn}
          aria-label={`${buy.number} in the file`}
        />
      </td>
      <td data-align="end">{cells.quantity}</td>
      <td>{buy.reason}</td>
      <td className="whitespace-nowrap">{cells.orderBy}</td>
      <td>{cells.stage}</td>
      {desk.showsAmounts ? (
        <>
          <td data-align="end">{cells.price}</td>
          <td className="whitespace-nowrap">{cells.pricedOn}</td>
        </>
      ) : null}
      <td className="no-print">{reviewId === null ? null : <Changes {...{ buy, desk, reviewId }} />}</td>
    </tr>
  );
}

function Changes({ buy, desk, reviewId }: Pick<RowProps, "buy" | "desk"> & { readonly reviewId: string }) {
  const [pending, start] = useTransition();
  const remove = () =>
    start(async () => {
      const answer = await removeThisBuy({ buyId: buy.id, version: buy.version });
      const { partId, quantity, reason } = buy;
      desk.tell(
        answer.ok
          ? {
              message: `${buy.number} taken off the purchase list.`,
              undo: () => addABuy({ reviewId, partId, quantity, reason }),
            }
          : { message: answer.error.reason },
      );
    });
  return (
    <div className="flex flex-wrap gap-2">
      <Dialog trigger="Change" title={`Change ${buy.number}`}>
        {(close) => (
          <BuyForm {...{ desk, reviewId, buy }} partId={buy.partId} reason={buy.reason} onDone={close} />
        )}
      </Dialog>
      <Button disabled={pending} onClick={remove}>
        Take off
      </Button>
    </div>
  );
}
