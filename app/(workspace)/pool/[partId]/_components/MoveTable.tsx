"use client";

import { type ReactNode, useTransition } from "react";
import { Button } from "@/app/_ui/Button";
import { RowTable } from "@/app/_ui/RowTable";
import { UndoBar } from "@/app/_ui/UndoBar";
import { type Done, useDone } from "@/app/(workspace)/_components/useDone";
import { askTransferOf, stepTransferOn } from "@/app/(workspace)/pool/actions";
import { percent } from "@/lib/view/chance";
import { exactMoney, money } from "@/lib/view/format";
import { NOT_KNOWN, plainNumber } from "@/lib/view/number";
import { moveValue, type PoolOfPart, type ProposedMove } from "@/lib/view/poolMoves";
import { hours } from "@/lib/view/time";

const headsOf = (showsAmounts: boolean) => [
  ...["From", "To", { text: "Pieces", end: true }],
  ...(showsAmounts ? [{ text: "Saves, a year", end: true }] : []),
  { text: "Giver’s own chance", end: true },
  { text: "Taker’s own chance", end: true },
  { text: "Way", end: true },
  "Heed",
  ...(showsAmounts ? [{ text: "Value at price", end: true }] : []),
  { text: "Ask", print: false },
];

const change = ({ before, after }: ProposedMove["to"]) => `${percent(before)} → ${percent(after)}`;

interface AskProps {
  readonly move: ProposedMove;
  readonly number: string;
  readonly tell: (done: Done) => void;
}

function Ask({ move, number, tell }: AskProps) {
  const [pending, start] = useTransition();
  const { lotId, toSiteId, pieces, fromSite, toSite, mayAsk } = move;
  if (!mayAsk) return <span className="text-ink-2 text-sm">Not with your role</span>;
  const ask = () =>
    start(async () => {
      const answer = await askTransferOf({ lotId, toSiteId, pieces });
      if (!answer.ok) return tell({ message: answer.error.reason });
      const { id } = answer.value;
      tell({
        message: `${pieces} × ${number} asked of ${fromSite} for ${toSite}.`,
        undo: () => stepTransferOn({ transferId: id, step: "withdraw", reason: "", bin: "" }),
      });
    });
  return (
    <Button aria-disabled={pending} onClick={pending ? () => undefined : ask}>
      {pending ? "Asking…" : `Ask ${fromSite} for ${toSite}`}
    </Button>
  );
}

interface MoveTableProps {
  readonly pool: PoolOfPart;
  readonly showsAmounts: boolean;
}

/** The moves that save most, each with both sites before and after. */
export function MoveTable({ pool, showsAmounts }: MoveTableProps) {
  const { done, tell, undo, close } = useDone();
  const sum = pool.moves.reduce((all, { saves }) => all + (saves ?? 0), 0);
  const pieces = pool.moves.reduce((all, move) => all + move.pieces, 0);
  return (
    <>
      {pool.moves.length === 0 ? (
        <p>
          No move keeps to these bounds: no piece would save that much elsewhere and leave its site within the
          target.
        </p>
      ) : (
        <RowTable caption="Proposed moves, in the order that saves most" heads={headsOf(showsAmounts)}>
          {pool.moves.map((move) => (
            <Row
              key={`${move.lotId} ${move.toSiteId}`}
              {...{ move, pool, showsAmounts }}
              ask={<Ask move={move} number={pool.number} tell={tell} />}
            />
          ))}
          <tr className="font-semibold">
            <th scope="row">All together</th>
            <td />
            <td data-align="end">{plainNumber(pieces)}</td>
            {showsAmounts ? <td data-align="end">{money(sum)}</td> : null}
            <td colSpan={showsAmounts ? 6 : 5} />
          </tr>
        </RowTable>
      )}
      <UndoBar message={done?.message ?? null} onClose={close} {...(done?.undo ? { onUndo: undo } : {})} />
    </>
  );
}

interface RowProps extends MoveTableProps {
  readonly move: ProposedMove;
  readonly ask: ReactNode;
}

function Row({ move, pool, showsAmounts, ask }: RowProps) {
  const value = moveValue(move, pool.price);
  return (
    <tr>
      <th scope="row">
        {move.fromSite}{" "}
        <span className="block font-normal text-ink-2 text-sm">
          {move.bin}, revision {move.revision === "" ? "not known" : move.revision}
        </span>
      </th>
      <td className="font-semibold">{move.toSite}</td>
      <td data-align="end">{plainNumber(move.pieces)}</td>
      {showsAmounts ? <td data-align="end">{money(move.saves)}</td> : null}
      <td data-align="end">{change(move.from)}</td>
      <td data-align="end">{change(move.to)}</td>
      <td data-align="end">{hours(pool.transferHours)}</td>
      <td className={move.border.customs ? "min-w-40 font-semibold text-sm" : "min-w-40 text-sm"}>
        {move.border.heed.join(". ") || "Same country and currency"}
      </td>
      {showsAmounts ? (
        <td data-align="end">{value === null ? NOT_KNOWN : exactMoney(value.amount, value.currency)}</td>
      ) : null}
      <td className="no-print">{ask}</td>
    </tr>
  );
}
