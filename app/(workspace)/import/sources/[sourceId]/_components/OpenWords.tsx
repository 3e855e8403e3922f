"use client";

import { UndoBar } from "@/app/_ui/UndoBar";
import { useDone } from "@/app/(workspace)/_components/useDone";
import { forgetThisWord } from "@/app/(workspace)/import/sources/actions";
import { type OpenWord, wordKind } from "@/lib/view/importSource";
import { WordForm } from "./WordForm";

interface Props {
  readonly sourceId: string;
  readonly words: readonly OpenWord[];
}

/** Words of the system's files that are open, each with what it may mean. */
export function OpenWords({ sourceId, words }: Props) {
  const { done, tell, undo, close } = useDone();
  return (
    <>
      {words.length === 0 ? <p>Every name and value in its files is known.</p> : null}
      <ul className="grid gap-4">
        {words.map((word) => (
          <li
            key={[word.kind, word.within, word.written].join(" ")}
            className="keep-together border-rule-2 border-b pb-3"
          >
            <WordForm
              sourceId={sourceId}
              word={word}
              onTaught={(meaning, wordId) =>
                tell({
                  message: `Learned: ${wordKind(word).toLowerCase()} “${word.written}” is ${meaning}.`,
                  undo: () => forgetThisWord({ wordId }),
                })
              }
            />
          </li>
        ))}
      </ul>
      <UndoBar message={done?.message ?? null} {...(done?.undo ? { onUndo: undo } : {})} onClose={close} />
    </>
  );
}
