"use client";

import { UndoBar } from "@/app/_ui/UndoBar";
import { useDone } from "@/app/(workspace)/_components/useDone";
import { PairForm } from "@/app/(workspace)/events/_components/PairForm";
import { PairTable } from "@/app/(workspace)/events/_components/PairTable";
import { partThisPair } from "@/app/(workspace)/events/actions";
import { type EventPair, pairReasons } from "@/lib/view/eventPair";

interface LikelyPairsProps {
  readonly pairs: readonly EventPair[];
  readonly mayWrite: boolean;
}

/** Pairs nobody has spoken on yet, each with its two records and the two answers. */
export function LikelyPairs({ pairs, mayWrite }: LikelyPairsProps) {
  const { done, tell, undo, close } = useDone();
  return (
    <>
      {pairs.length === 0 ? <p>No two records of different registers look like one event.</p> : null}
      <ul className="grid gap-4">
        {pairs.map((pair) => (
          <li
            key={`${pair.first.id} ${pair.second.id}`}
            className="keep-together border-rule-2 border-b pb-4"
          >
            <p className="mb-1 text-ink-2">{pairReasons(pair).join(" · ")}</p>
            <PairTable pair={pair} />
            {mayWrite ? (
              <PairForm
                pair={pair}
                onSettled={(message, matchId) => tell({ message, undo: () => partThisPair({ matchId }) })}
              />
            ) : null}
          </li>
        ))}
      </ul>
      <UndoBar message={done?.message ?? null} {...(done?.undo ? { onUndo: undo } : {})} onClose={close} />
    </>
  );
}
