"use client";

import { useTransition } from "react";
import { Button } from "@/app/_ui/Button";
import { RowTable } from "@/app/_ui/RowTable";
import { UndoBar } from "@/app/_ui/UndoBar";
import { useDone } from "@/app/(workspace)/_components/useDone";
import { forgetThisWord } from "@/app/(workspace)/import/sources/actions";
import { type TaughtWord, wordKind } from "@/lib/view/importSource";
import { day } from "@/lib/view/time";

const HEADS = ["In its files", "What it is", "Means", "By", { text: "Take out", print: false }];

/** What the system means by its words, and the way to take one out. */
export function TaughtWords({ words }: { readonly words: readonly TaughtWord[] }) {
  const { done, tell, undo, close } = useDone();
  const [pending, start] = useTransition();
  const forget = (wordId: string) =>
    start(async () => {
      const answer = await forgetThisWord({ wordId });
      tell({ message: answer.ok ? "Taken out; later files are read without it." : answer.error.reason });
    });
  return (
    <>
      {words.length === 0 ? <p>None yet.</p> : null}
      {words.length > 0 ? (
        <RowTable caption="Words learned" heads={HEADS}>
          {words.map((word) => (
            <tr key={word.id}>
              <th scope="row">{word.written}</th>
              <td>{wordKind(word)}</td>
              <td>{word.meaning}</td>
              <td>{`${word.by}, ${day(word.on)}`}</td>
              <td className="no-print">
                <Button
                  kind="quiet"
                  aria-label={`Take out ${word.written}`}
                  aria-disabled={pending}
                  onClick={() => !pending && forget(word.id)}
                >
                  Take out
                </Button>
              </td>
            </tr>
          ))}
        </RowTable>
      ) : null}
      <UndoBar message={done?.message ?? null} {...(done?.undo ? { onUndo: undo } : {})} onClose={close} />
    </>
  );
}
