"use client";

import { AsOfLink } from "@/app/_ui/AsOfLink";
import { UndoBar } from "@/app/_ui/UndoBar";
import { useDone } from "@/app/(workspace)/_components/useDone";
import { takeThisNumberBack } from "@/app/(workspace)/parts/numbers/actions";
import { count } from "@/lib/view/number";
import type { OpenNumber } from "@/lib/view/partNumbers";
import { NumberForm } from "./NumberForm";
import { SuggestionTable } from "./SuggestionTable";

interface Props {
  readonly numbers: readonly OpenNumber[];
  /** How many there are, shown or not. */
  readonly of: number;
  readonly mayWrite: boolean;
  readonly everySite: boolean;
}

/** Numbers nothing on record is called, each with what it may mean and the three answers. */
export function OpenNumbers({ numbers, of, mayWrite, everySite }: Props) {
  const { done, tell, undo, close } = useDone();
  return (
    <>
      {numbers.length === 0 ? (
        <p>Every number of the files loaded or waiting is that of a part on record.</p>
      ) : null}
      <ul className="grid gap-5">
        {numbers.map((number) => (
          <li
            key={[number.written, number.maker, number.siteCode].join(" ")}
            className="keep-together border-rule-2 border-b pb-4"
          >
            <h3 className="font-semibold">
              {number.written}
              {number.later ? " – put off" : ""}
            </h3>
            <p className="mb-2 text-ink-2">
              {[number.maker, number.siteCode, number.detail].filter(Boolean).join(" · ")}
              {number.maker || number.siteCode || number.detail ? " · " : ""}
              {count(number.rows, "row")} of{" "}
              {number.files.map(({ batchId, fileName }, index) => (
                <span key={batchId}>
                  {index > 0 ? ", " : ""}
                  <AsOfLink href={`/import/${batchId}`}>{fileName}</AsOfLink>
                </span>
              ))}
            </p>
            <SuggestionTable number={number} />
            {mayWrite ? (
              <NumberForm
                number={number}
                everySite={everySite}
                onSettled={(message, back) => tell({ message, undo: () => takeThisNumberBack(back) })}
              />
            ) : null}
          </li>
        ))}
      </ul>
      {of > numbers.length ? (
        <p className="mt-3 text-ink-2">
          The {numbers.length} with the most rows are shown; the others follow.
        </p>
      ) : null}
      <UndoBar message={done?.message ?? null} {...(done?.undo ? { onUndo: undo } : {})} onClose={close} />
    </>
  );
}
