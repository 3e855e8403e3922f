"use client";

import { AsOfLink } from "@/app/_ui/AsOfLink";
import { RowTable } from "@/app/_ui/RowTable";
import { UndoBar } from "@/app/_ui/UndoBar";
import { useDone } from "@/app/(workspace)/_components/useDone";
import { TransferActions } from "@/app/(workspace)/pool/_components/TransferActions";
import { plainNumber } from "@/lib/view/number";
import { type SeenTransfer, takenStepText, transferState } from "@/lib/view/transfer";
import { zonedMoment } from "@/lib/view/zone";

const HEADS = [
  "State",
  "Part",
  "From",
  "To",
  { text: "Pieces", end: true },
  "Who and when",
  { text: "Next", print: false },
];

function StateMark({ transfer }: { readonly transfer: SeenTransfer }) {
  const { letter, name } = transferState(transfer.state);
  return (
    <span className="inline-flex items-baseline gap-1.5 whitespace-nowrap">
      <b aria-hidden="true" className="inline-block min-w-5 border border-ink px-1 text-center text-sm">
        {letter}
      </b>
      {name}
    </span>
  );
}

function Steps({ transfer }: { readonly transfer: SeenTransfer }) {
  return (
    <ul className="text-sm">
      {transfer.steps.map(({ at, by, note, ...step }) => (
        <li key={`${at} ${step.state}`}>
          {takenStepText(step)}{" "}
          <span className="text-ink-2">{`${by}, ${zonedMoment(at, transfer.timeZone)}`}</span>
          {note === "" ? null : <span className="block">“{note}”</span>}
        </li>
      ))}
    </ul>
  );
}

/** Transfers with who moved them and what can be done next. */
export function TransferList({ transfers }: { readonly transfers: readonly SeenTransfer[] }) {
  const { done, tell, undo, close } = useDone();
  return (
    <>
      {transfers.length === 0 ? (
        <p>Nothing is asked for, under way or done.</p>
      ) : (
        <RowTable caption="Transfers, the open ones first" heads={HEADS}>
          {transfers.map((transfer) => (
            <tr key={transfer.id}>
              <th scope="row">
                <StateMark transfer={transfer} />
              </th>
              <td>
                <AsOfLink href={`/pool/${transfer.partId}`}>{transfer.number}</AsOfLink>
                <span className="block text-ink-2 text-sm">
                  revision {transfer.revision === "" ? "not known" : transfer.revision}
                </span>
              </td>
              <td>
                {transfer.fromSite} <span className="text-ink-2 text-sm">{transfer.bin}</span>
              </td>
              <td>{transfer.toSite}</td>
              <td data-align="end">{plainNumber(transfer.pieces)}</td>
              <td>
                <Steps transfer={transfer} />
              </td>
              <td className="no-print">
                <TransferActions transfer={transfer} tell={tell} />
              </td>
            </tr>
          ))}
        </RowTable>
      )}
      <UndoBar message={done?.message ?? null} onClose={close} {...(done?.undo ? { onUndo: undo } : {})} />
    </>
  );
}
