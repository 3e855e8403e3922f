"use client";

import { useTransition } from "react";
import { Button } from "@/app/_ui/Button";
import { RowTable } from "@/app/_ui/RowTable";
import { UndoBar } from "@/app/_ui/UndoBar";
import { useDone } from "@/app/(workspace)/_components/useDone";
import { partThisPair } from "@/app/(workspace)/events/actions";
import type { SettledPair } from "@/lib/view/eventPair";
import { day } from "@/lib/view/time";

const HEADS = [
  "Counts",
  "The other record",
  "Said",
  "How it is known",
  "By",
  { text: "Take back", print: false },
];

/** What people said of pairs, both records named, and the way back. */
export function SettledPairs({ pairs }: { readonly pairs: readonly SettledPair[] }) {
  const { done, tell, undo, close } = useDone();
  const [pending, start] = useTransition();
  const part = (matchId: string) =>
    start(async () => {
      const answer = await partThisPair({ matchId });
      tell({ message: answer.ok ? "Parted: both records count again." : answer.error.reason });
    });
  return (
    <>
      <RowTable caption="Pairs settled by people" heads={HEADS}>
        {pairs.map(({ first, second, matchId, verdict, ...said }) => (
          <tr key={matchId}>
            <th scope="row">{`${first.source} ${first.reference}, ${day(first.day)}`}</th>
            <td>{`${second.source} ${second.reference}, ${day(second.day)}`}</td>
            <td>
              {verdict === "same" ? "one event" : "two events"}
              {said.filled.length > 0 ? `; took over ${said.filled.join(", ")}` : ""}
            </td>
            <td>{said.reason}</td>
            <td>{`${said.decidedBy}, ${day(said.decidedOn)}`}</td>
            <td className="no-print">
              {said.mayPart ? (
                <Button
                  kind="quiet"
                  aria-label={`Part ${first.reference} and ${second.reference}`}
                  aria-disabled={pending}
                  onClick={() => !pending && part(matchId)}
                >
                  Part them
                </Button>
              ) : null}
            </td>
          </tr>
        ))}
      </RowTable>
      <UndoBar message={done?.message ?? null} {...(done?.undo ? { onUndo: undo } : {})} onClose={close} />
    </>
  );
}
