"use client";

import { useTransition } from "react";
import { AsOfLink } from "@/app/_ui/AsOfLink";
import { Button } from "@/app/_ui/Button";
import { RowTable } from "@/app/_ui/RowTable";
import { UndoBar } from "@/app/_ui/UndoBar";
import { useDone } from "@/app/(workspace)/_components/useDone";
import { settleThisNumber, takeThisNumberBack } from "@/app/(workspace)/parts/numbers/actions";
import { type LikePair, scoreWord } from "@/lib/view/partNumbers";

interface Props {
  readonly pairs: readonly LikePair[];
  readonly mayWrite: boolean;
}

const HEADS = ["Part", "Part", { text: "Speaks for it", end: true }, "Why", { text: "Answer", print: false }];

/** Parts on record whose numbers are alike: look at a merge, or say that they are two. */
export function LikePairs({ pairs, mayWrite }: Props) {
  const { done, tell, undo, close } = useDone();
  const [pending, start] = useTransition();
  const part = ({ first, second }: LikePair) =>
    start(async () => {
      const said = { written: first.number, maker: first.maker, partId: second.id, siteCode: null };
      const answer = await settleThisNumber({ ...said, verdict: "other", reason: "Two parts" });
      if (!answer.ok) return tell({ message: answer.error.reason });
      tell({ message: "Kept: they are two parts.", undo: () => takeThisNumberBack(answer.value) });
    });
  if (pairs.length === 0) return <p>No two parts on record look like one.</p>;
  return (
    <>
      <RowTable caption="Parts that may be one" heads={HEADS}>
        {pairs.map((pair) => (
          <tr key={`${pair.first.id} ${pair.second.id}`}>
            {[pair.first, pair.second].map(({ id, maker, number }) => (
              <td key={id}>
                <AsOfLink href={`/parts/${id}`}>{`${maker} ${number}`}</AsOfLink>
              </td>
            ))}
            <td data-align="end">{scoreWord(pair.score)}</td>
            <td>{pair.why}</td>
            <td className="no-print">
              {mayWrite ? (
                <p className="flex flex-wrap items-center gap-2">
                  <AsOfLink href={`/parts/merge?keep=${pair.first.id}&other=${pair.second.id}`}>
                    Look at a merge
                  </AsOfLink>
                  <Button
                    kind="quiet"
                    aria-label={`${pair.first.number} and ${pair.second.number} are two parts`}
                    aria-disabled={pending}
                    onClick={() => !pending && part(pair)}
                  >
                    Two parts
                  </Button>
                </p>
              ) : null}
            </td>
          </tr>
        ))}
      </RowTable>
      <UndoBar message={done?.message ?? null} {...(done?.undo ? { onUndo: undo } : {})} onClose={close} />
    </>
  );
}
